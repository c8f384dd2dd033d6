import type { Connection } from 'vscode-languageserver';
import type { WithAnalysis } from '../analysis/module.ts';
import { serveCutFiles } from './cut-files.ts';
import { serveDrawings } from './drawing.ts';
import { serveExpectations } from './expectations.ts';
import { serveExplanations } from './explain.ts';
import { serveLayerCards } from './layer-card.ts';
import { serveLookingUp } from './look-up.ts';
import type { Machine } from './machine.ts';
import { servePapers } from './paper.ts';
import { serveReference } from './reference.ts';
import { serveReports } from './report.ts';

/** Requests of our own beside those of the protocol; `language/protocol` says what they hold. */
export function serveOwnRequests(connection: Connection, services: WithAnalysis, machine: Machine): void {
  serveExplanations(connection, services);
  serveReference(connection);
  serveLayerCards(connection, services);
  serveExpectations(connection, services);
  serveLookingUp(connection, services);
  serveReports(connection, services);
  serveDrawings(connection, services, machine);
  serveCutFiles(connection, services, machine);
  servePapers(connection, services, machine);
}
