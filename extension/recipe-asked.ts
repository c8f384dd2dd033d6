import * as vscode from 'vscode';
import { type RecipeHead, recipeNear } from './recipe-head.ts';

/** The recipe, in one of its sizes, that a command is about, and the file that it stands in. */
export interface AskedRecipe extends RecipeHead {
  readonly uri: string;
}

/** What a link, a lens or a kept page names; undefined for the icon of an editor, which hands over its file. */
export function recipeGiven(given: unknown): AskedRecipe | undefined {
  if (typeof given !== 'object' || given === null) return undefined;
  const { uri, recipe, size } = given as Readonly<Record<string, unknown>>;
  if (typeof uri !== 'string' || typeof recipe !== 'string') return undefined;
  return { uri, recipe, ...(typeof size === 'string' ? { size } : {}) };
}

/** The recipe, in its size, that the cursor stands in, for every command alike; outside of all, the first of the file. */
export function recipeHere(): AskedRecipe | undefined {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId !== 'layup') return undefined;
  const { document, selection } = editor;
  const head = recipeNear((line) => document.lineAt(line).text, document.lineCount, selection.active.line);
  return head && { uri: document.uri.toString(), ...head };
}
