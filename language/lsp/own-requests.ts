import type { Cancellation } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { WithAnalysis } from '../analysis/module.ts';
import { cutFilesRequest } from '../protocol/cut-files.ts';
import { drawingFileRequest, drawingRequest } from '../protocol/drawing.ts';
import { layerCardRequest } from '../protocol/layer-card.ts';
import { newRecordRequest, paperRequest } from '../protocol/paper.ts';
import { referenceRequest } from '../protocol/reference.ts';
import { reportRequest } from '../protocol/report.ts';
import { serveExpectations } from './expectations.ts';
import { serveExplanations } from './explain.ts';
import { serveLookingUp } from './look-up.ts';
import type { Machine } from './machine.ts';

type Answer<Params, Result> = (params: Params, token: Cancellation.CancellationToken) => Result | Promise<Result>;

/** Requests of our own beside those of the protocol; `language/protocol` says what they hold. */
export function serveOwnRequests(connection: Connection, services: WithAnalysis, machine: Machine): void {
  serveExplanations(connection, services);
  serveExpectations(connection, services);
  serveLookingUp(connection, services);

  /** What draws and fills pages is read when the first page is asked for: nobody waits for it at the start. */
  const whenAsked = <Params, Result>(request: string, read: () => Promise<Answer<Params, Result>>): void =>
    void connection.onRequest(request, async (params: Params, token) => (await read())(params, token));
  whenAsked(layerCardRequest, async () => (await import('./at-cursor.ts')).answerLayerCard(services));
  whenAsked(referenceRequest, async () => (await import('./reference.ts')).answerReference);
  whenAsked(reportRequest, async () => (await import('./report.ts')).answerReport(services));
  whenAsked(drawingRequest, async () => (await import('./drawing.ts')).answerDrawing(services));
  whenAsked(drawingFileRequest, async () => (await import('./drawing.ts')).answerDrawingFile(services, machine));
  whenAsked(cutFilesRequest, async () => (await import('./cut-files.ts')).answerCutFiles(services, machine));
  whenAsked(paperRequest, async () => (await import('./paper.ts')).answerPaper(services, machine));
  whenAsked(newRecordRequest, async () => (await import('./paper.ts')).answerNewRecord(services));
}
