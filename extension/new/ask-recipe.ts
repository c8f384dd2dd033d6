/** The questions that a new recipe is written from. Escape at any of them ends it, and nothing is written. */
import * as vscode from 'vscode';
import {
  coresOf,
  coreThicknesses,
  fabricsOf,
  isRecipeName,
  type OutlineKind,
  outlineKinds,
  type ProcessKind,
  processKinds,
  type RecipeAnswers,
  sizeLimits,
} from './choices.ts';
import { readSize } from './size.ts';

const { t } = vscode.l10n;

const processWords = (): Readonly<Record<ProcessKind, string>> => ({
  hand: t('Hand layup: gelcoat, cloth and resin by brush and roller'),
  bagged: t('Bagged: laid wet, then pressed by a vacuum bag'),
  infusion: t('Infusion: laid dry, resin drawn in by vacuum'),
  prepreg: t('Prepreg: cloth with its resin, under a bag in the oven'),
});

const outlineWords = (): Readonly<Record<OutlineKind, string>> => ({
  rectangle: t('Sharp corners'),
  rounded: t('Rounded corners'),
  circle: t('Round'),
  ellipse: t('Oval'),
  capsule: t('Half-round ends'),
});

const steps = 6;
const titleOf = (step: number): string => t('New recipe ({0} of {1})', step, steps);

/** One of some words of the notation, each with what it means. */
async function choose<T extends string>(
  step: number,
  placeHolder: string,
  words: readonly T[],
  meaning?: Readonly<Record<T, string>>,
): Promise<T | undefined> {
  const items = words.map((label) => ({ label, description: meaning?.[label] ?? '' }));
  const chosen = await vscode.window.showQuickPick(items, { title: titleOf(step), placeHolder, ignoreFocusOut: true });
  return words.find((word) => word === chosen?.label);
}

async function askSize(kind: OutlineKind): Promise<{ readonly length: number; readonly width: number } | undefined> {
  const round = kind === 'circle';
  const text = await vscode.window.showInputBox({
    title: titleOf(3),
    prompt: round
      ? t('Finished diameter, such as 600 mm or 24 in')
      : t('Finished size, such as 720 mm by 520 mm or 28 in by 20 in'),
    value: round ? '600 mm' : '720 mm by 520 mm',
    ignoreFocusOut: true,
    validateInput: (typed) =>
      readSize(typed) === undefined
        ? t('One or two lengths between {0} mm and {1} mm', sizeLimits.least * 1000, sizeLimits.most * 1000)
        : undefined,
  });
  return text === undefined ? undefined : readSize(text);
}

/** The core, `'none'`, or undefined where it was broken off. */
async function askCore(process: ProcessKind): Promise<RecipeAnswers['core'] | 'none'> {
  const thickness = (metres: number): string => `${Math.round(metres * 1000)} mm`;
  const none = { label: t('No core: a plain laminate'), core: 'none' as const };
  const cored = coresOf[process].flatMap((material) =>
    coreThicknesses.map((each) => ({ label: `${material}  ${thickness(each)}`, core: { material, thickness: each } })),
  );
  const chosen = await vscode.window.showQuickPick<{ label: string; core: RecipeAnswers['core'] | 'none' }>(
    [none, ...cored],
    { title: titleOf(5), placeHolder: t('Core and its thickness'), ignoreFocusOut: true },
  );
  return chosen?.core;
}

const askName = (): Thenable<string | undefined> =>
  vscode.window.showInputBox({
    title: titleOf(6),
    prompt: t('Name of the recipe and of its file'),
    value: 'first_panel',
    ignoreFocusOut: true,
    validateInput: (typed) =>
      isRecipeName(typed) ? undefined : t('A letter first, then letters, digits and underscores: side_hatch'),
  });

export async function askRecipe(): Promise<RecipeAnswers | undefined> {
  const process = await choose(1, t('How is it made?'), processKinds, processWords());
  if (process === undefined) return undefined;
  const kind = await choose(2, t('Its outline'), outlineKinds, outlineWords());
  if (kind === undefined) return undefined;
  const size = await askSize(kind);
  if (size === undefined) return undefined;
  const fabric = await choose(4, t('Cloth of the skins'), fabricsOf[process]);
  if (fabric === undefined) return undefined;
  const core = await askCore(process);
  if (core === undefined) return undefined;
  const name = await askName();
  if (name === undefined) return undefined;
  return { name, process, outline: { kind, ...size }, fabric, ...(core === 'none' ? {} : { core }) };
}
