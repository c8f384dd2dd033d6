import type { Cancellation } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { WithAnalysis } from '../analysis/module.ts';
import {
  type ExplainParams,
  type ExplainResult,
  explainRequest,
  type RulePageParams,
  type RulePageResult,
  rulePageRequest,
} from '../protocol/explain.ts';
import { findingNear, pageWithCase } from '../view/rule-case.ts';
import { explained } from '../view/rule-page.ts';
import { say } from '../view/text.ts';
import { builtDocument } from './built.ts';
import { cardBook } from './shown-book.ts';

/** Request `laybook/explain` */
export function serveExplanations(connection: Connection, services: WithAnalysis): void {
  connection.onRequest(explainRequest, async (params: ExplainParams, token): Promise<ExplainResult> => {
    const rule = explained(params.rule);
    if (rule === undefined)
      return {
        markdown: say('There is no rule of the name `{rule}`.', { rule: params.rule.replace(/[^a-z0-9/-]/gi, '') }),
      };
    const page = (await pageOf(connection, params.rule)) ?? `# ${params.rule}\n\n${rule.opening}\n`;
    return { markdown: (await pageOfCase(services, params, page, token)) ?? page };
  });
}

/** The text of a page. An editor that hands none over gets the opening, which the server knows. */
async function pageOf(connection: Connection, rule: string): Promise<string | undefined> {
  const params: RulePageParams = { rule };
  try {
    return (await connection.sendRequest<RulePageResult>(rulePageRequest, params)).text;
  } catch {
    return undefined;
  }
}

async function pageOfCase(
  services: WithAnalysis,
  { rule, case: found }: ExplainParams,
  page: string,
  token: Cancellation.CancellationToken,
): Promise<string | undefined> {
  const document = found && (await builtDocument(services, found.uri, token));
  if (found === undefined || document === undefined) return undefined;
  const finding = findingNear(document, await services.analysis.findings(document, token), rule, found.position.line);
  return finding && pageWithCase(page, document, finding, cardBook(services).style());
}
