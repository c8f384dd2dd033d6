import type { LangiumDocument } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import type { CodeActionParams } from 'vscode-languageserver-protocol';
import { type CodeAction, CodeActionKind, type Diagnostic } from 'vscode-languageserver-protocol';
import type { Fix } from '../lower/index.ts';
import { rules } from '../rules/generated/rules.ts';
import type { Rule } from '../rules/rule.ts';
import { say, sayText } from '../view/text.ts';
import { rangeOf } from './diagnostics.ts';

/** Quick fixes: the edits that the finding itself carries, and the line that accepts it. */
export class LayupCodeActions implements CodeActionProvider {
  getCodeActions(document: LangiumDocument, params: CodeActionParams): CodeAction[] {
    return params.context.diagnostics
      .filter((diagnostic) => diagnostic.source === 'laybook')
      .flatMap((diagnostic) => [...fixesOf(document, diagnostic), ...acceptOf(document, diagnostic)]);
  }
}

function fixesOf(document: LangiumDocument, diagnostic: Diagnostic): CodeAction[] {
  const data = diagnostic.data as { readonly fixes?: readonly Fix[] } | undefined;
  return (data?.fixes ?? []).map((fix, index) => ({
    title: sayText(fix.title),
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    isPreferred: index === 0,
    edit: {
      changes: {
        [document.uri.toString()]: fix.edits.map((edit) => ({ range: rangeOf(document, edit), newText: edit.text })),
      },
    },
  }));
}

const neverAccepted: ReadonlySet<string> = new Set(
  (rules as readonly Rule[]).filter((rule) => rule.always === true).map((rule) => rule.name),
);

/** `accept RULE "reason"` at the end of the line; never for what could not be read, and the reason is left to the writer. */
function acceptOf(document: LangiumDocument, diagnostic: Diagnostic): CodeAction[] {
  const rule = String(diagnostic.code);
  if (/^(line|unit|name)\//.test(rule) || neverAccepted.has(rule)) return [];
  const { textDocument } = document;
  const line = textDocument.getText({
    start: { line: diagnostic.range.start.line, character: 0 },
    end: { line: diagnostic.range.start.line + 1, character: 0 },
  });
  // a // inside of a text is no comment
  const code = line.replace(/("[^"\n]*"?)|\/\/.*$/gs, '$1').replace(/\s*\{?\s*$/, '');
  const at = { line: diagnostic.range.start.line, character: code.length };
  return [
    {
      title: say('Accept {rule} on this line', { rule }),
      kind: CodeActionKind.QuickFix,
      diagnostics: [diagnostic],
      edit: {
        changes: {
          [document.uri.toString()]: [{ range: { start: at, end: at }, newText: `, accept ${rule} "say why"` }],
        },
      },
    },
  ];
}
