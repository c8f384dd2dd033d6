import * as vscode from 'vscode';
import {
  type CutBy,
  type CutFilesParams,
  type CutFormat,
  type CutPaper,
  cutFormats,
  cutOrders,
  cutPapers,
} from '../../language/protocol/cut-files.ts';

const { t } = vscode.l10n;

type Asked = Pick<CutFilesParams, 'format' | 'by' | 'paper' | 'quantity'>;

interface Choice<T> extends vscode.QuickPickItem {
  readonly value: T;
}

const formats = (): Choice<{ readonly format: CutFormat; readonly paper: CutPaper }>[] => [
  { label: 'DXF', description: t('for a cutter'), value: { format: 'dxf', paper: 'a4' } },
  { label: 'SVG', description: t('for a cutter or a drawing program'), value: { format: 'svg', paper: 'a4' } },
  { label: 'PDF, A4', description: t('pages to print and lay together'), value: { format: 'pdf', paper: 'a4' } },
  {
    label: 'PDF, Letter',
    description: t('pages to print and lay together'),
    value: { format: 'pdf', paper: 'letter' },
  },
];

const orders = (): Choice<CutBy>[] => [
  { label: t('A file for each piece'), value: 'piece' },
  {
    label: t('A file for each material'),
    description: t('all its pieces side by side on the roll'),
    value: 'material',
  },
];

const partsTyped = /^\s*[1-9]\d{0,3}\s*$/;

/** Asks how and for how many parts is cut; nothing where the asking was broken off. */
export async function askCut(): Promise<Asked | undefined> {
  const title = (step: number): string => t('Write cut files ({0} of {1})', step, 3);
  const format = await vscode.window.showQuickPick(formats(), { title: title(1), ignoreFocusOut: true });
  if (format === undefined) return undefined;
  const by = await vscode.window.showQuickPick(orders(), { title: title(2), ignoreFocusOut: true });
  if (by === undefined) return undefined;
  const parts = await vscode.window.showInputBox({
    title: title(3),
    prompt: t('For how many parts?'),
    value: '1',
    ignoreFocusOut: true,
    validateInput: (typed) => (partsTyped.test(typed) ? undefined : t('A whole number from 1 to 9999')),
  });
  return parts === undefined ? undefined : { ...format.value, by: by.value, quantity: Number.parseInt(parts, 10) };
}

/** The answers that the argument of the command brings along. */
export function readCut(given: unknown): Asked | undefined {
  if (typeof given !== 'object' || given === null) return undefined;
  const { format, by, paper, quantity } = given as Readonly<Record<string, unknown>>;
  const known = cutFormats.find((each) => each === format);
  if (known === undefined) return undefined;
  return {
    format: known,
    by: cutOrders.find((each) => each === by) ?? 'piece',
    paper: cutPapers.find((each) => each === paper) ?? 'a4',
    quantity: typeof quantity === 'number' && Number.isInteger(quantity) && quantity > 0 ? quantity : 1,
  };
}
