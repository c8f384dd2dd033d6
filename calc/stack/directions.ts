import type { Cloth } from '../model/material.ts';
import type { MirrorTurn } from './laid.ts';

/** One sheet of fibres of a laid piece. */
export interface LaidDirection {
  /** rad from x in [0, pi); none for a random mat */
  readonly angle?: number;
  /** kg/m2 */
  readonly arealWeight: number;
}

const SAME_ANGLE = 1e-6;

/** An angle of a fibre, which has no head: in [0, pi). */
export function fibreAngle(angle: number): number {
  const turned = ((angle % Math.PI) + Math.PI) % Math.PI;
  return Math.PI - turned < SAME_ANGLE ? 0 : turned;
}

/**
 * Directions of a piece from the tool side outwards. The cloth lies with the roll's underside to the tool; turned over about
 * its warp it shows the sheets in reverse order and each at the opposite angle to the warp.
 */
export function laidDirections(cloth: Cloth, angle: number, turnedOver: boolean): LaidDirection[] {
  const sheets = turnedOver ? [...cloth.layers].reverse() : cloth.layers;
  const sign = turnedOver ? -1 : 1;
  return sheets.map((sheet) => ({
    arealWeight: sheet.arealWeight.si,
    ...(sheet.angle === undefined ? {} : { angle: fibreAngle(angle + sign * sheet.angle.si) }),
  }));
}

function sameSheets(left: readonly LaidDirection[], right: readonly LaidDirection[]): boolean {
  return left.every((sheet, i) => {
    const other = right[i];
    if (other === undefined || Math.abs(sheet.arealWeight - other.arealWeight) > 1e-9) return false;
    if (sheet.angle === undefined || other.angle === undefined) return sheet.angle === other.angle;
    const apart = Math.abs(sheet.angle - other.angle);
    return Math.min(apart, Math.PI - apart) < SAME_ANGLE;
  });
}

/** A cloth whose sheets lie in one another has no order through its thickness, and one sheet has none either. */
function hasOrder(cloth: Cloth): boolean {
  return cloth.style === 'stitched' && cloth.layers.length > 1;
}

/**
 * The turn that makes a piece the mirror image of another piece of the same cloth, which lies at `angle`. Tried in the order of
 * least trouble at the bench: as it is, turned in its plane (the smaller turn first), turned over. Standard laminate
 * code (ASTM D6507) counts a symmetric laminate sheet by sheet, so the order inside the cloth counts too.
 */
export function mirrorTurn(of: string, cloth: Cloth | undefined, angle: number, turnedOver: boolean): MirrorTurn {
  const asItIs: MirrorTurn = { of, turn: 0, over: false };
  if (cloth === undefined || !hasOrder(cloth)) return asItIs;
  const wanted = laidDirections(cloth, angle, turnedOver).reverse();
  for (const over of [false, true]) {
    const laid = laidDirections(cloth, angle, turnedOver !== over);
    for (const turn of turnsToTry(laid[0], wanted[0])) {
      if (sameSheets(laidDirections(cloth, angle + turn, turnedOver !== over), wanted)) return { of, turn, over };
    }
  }
  const got = laidDirections(cloth, angle, turnedOver);
  const angles = (sheets: readonly LaidDirection[]) => sheets.map((sheet) => sheet.angle ?? 0);
  return { ...asItIs, orphan: { wanted: angles(wanted), got: angles(got) } };
}

/** Only a turn that brings the first sheet right can bring all of them right. */
function turnsToTry(first: LaidDirection | undefined, wanted: LaidDirection | undefined): readonly number[] {
  if (first?.angle === undefined || wanted?.angle === undefined) return [0];
  const turn = fibreAngle(wanted.angle - first.angle);
  return turn > Math.PI / 2 + SAME_ANGLE ? [turn - Math.PI] : [turn];
}
