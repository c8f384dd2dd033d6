/** Runs inside the extension host: VS Code calls `run`. */
import { readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import Mocha from 'mocha';
import * as vscode from 'vscode';

const limitMs = 60_000;

export async function run(): Promise<void> {
  // A workbench in a browser saves by itself after a second: what a check has typed could not be reverted then.
  await vscode.workspace.getConfiguration('files').update('autoSave', 'off', vscode.ConfigurationTarget.Global);
  // A window that is slow once is asked again; what fails twice has failed.
  const mocha = new Mocha({ ui: 'bdd', timeout: limitMs, retries: 1, color: false });
  const folder = path.join(__dirname, 'checks');
  for (const file of readdirSync(folder).sort()) mocha.addFile(path.join(folder, file));
  const failed = await new Promise<number>((resolve) => {
    const runner = mocha.run(resolve);
    runner.on('end', () => {
      const passed = runner.stats?.passes ?? 0;
      const report = process.env.LAYBOOK_REPORT;
      if (report) writeFileSync(report, JSON.stringify({ passed, failed: runner.stats?.failures ?? 1 }));
    });
  });
  if (failed > 0) throw new Error(`${failed} workbench tests failed`);
}
