import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import * as vscode from 'vscode';
import { open, until } from '../editor.ts';

describe('tasks', () => {
  it('check the recipes of the folder with the command that comes with the extension', async () => {
    await open('first_try.layup');
    const [task] = await vscode.tasks.fetchTasks({ type: 'laybook' });
    assert.ok(task, 'a task is offered');
    assert.equal(task.definition.command, 'check');
    let ended: number | undefined | 'no code';
    const listener = vscode.tasks.onDidEndTaskProcess(({ execution, exitCode }) => {
      if (execution.task.name === task.name) ended = exitCode ?? 'no code';
    });
    await vscode.tasks.executeTask(task);
    // 1: there are findings, the first try is full of them
    assert.equal(await until('the end of the task', () => ended), 1);
    listener.dispose();
  });
});

describe('a file in the Explorer', () => {
  it('is opened for the view that its menu asks for', async () => {
    const { uri } = await open('drip_tray.layup');
    await open('sled_deck.layup');
    await vscode.commands.executeCommand('laybook.showPlan', uri);
    assert.ok(vscode.window.visibleTextEditors.some(({ document }) => document.uri.toString() === uri.toString()));
  });
});
