/** Reads the answers that come as the argument of a command: from a link, a key binding, a test. */
import { isRecipeName, outlineKinds, processKinds, type RecipeAnswers, sizeLimits } from './choices.ts';

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null;
const isLength = (value: unknown): value is number =>
  typeof value === 'number' && value >= sizeLimits.least && value <= sizeLimits.most;
const isMaterial = (value: unknown): value is string => typeof value === 'string' && isRecipeName(value);

/** The answers, where all are there and make sense; else undefined. */
export function readRecipeAnswers(given: unknown): RecipeAnswers | undefined {
  if (!isFields(given) || !isFields(given.outline)) return undefined;
  const { name, fabric, core } = given;
  const process = processKinds.find((each) => each === given.process);
  const kind = outlineKinds.find((each) => each === (given.outline as Fields).kind);
  const { length, width } = given.outline;
  if (typeof name !== 'string' || !isRecipeName(name) || process === undefined || kind === undefined) return undefined;
  if (!isLength(length) || !isLength(width) || !isMaterial(fabric)) return undefined;
  const plain = { name, process, outline: { kind, length, width }, fabric };
  if (core === undefined) return plain;
  if (!isFields(core) || !isMaterial(core.material) || typeof core.thickness !== 'number') return undefined;
  if (!(core.thickness >= 0.001 && core.thickness <= 0.1)) return undefined;
  return { ...plain, core: { material: core.material, thickness: core.thickness } };
}
