/** Tasks of the terminal command that comes with the extension; nothing else is run. */
import * as vscode from 'vscode';

const { t } = vscode.l10n;

/** Subcommands that a task may run; the manifest lists the same. */
export const taskCommands = ['check', 'report', 'cut', 'draw', 'sheet', 'records', 'lots', 'format'] as const;

interface LaybookTask extends vscode.TaskDefinition {
  readonly command: (typeof taskCommands)[number];
  readonly arguments?: readonly string[];
}

const isOurs = (definition: vscode.TaskDefinition): definition is LaybookTask =>
  (taskCommands as readonly unknown[]).includes(definition.command) &&
  (definition.arguments === undefined ||
    (Array.isArray(definition.arguments) && definition.arguments.every((each) => typeof each === 'string')));

/** `program`: the terminal command, as a file. It is run by the Node that runs the extension. */
export function provideTasks(program: string): vscode.Disposable {
  const made = (
    definition: LaybookTask,
    scope: vscode.WorkspaceFolder | vscode.TaskScope,
    name: string,
  ): vscode.Task => {
    const task = new vscode.Task(
      definition,
      scope,
      name,
      'laybook',
      new vscode.ProcessExecution(process.execPath, [program, definition.command, ...(definition.arguments ?? [])], {
        // Where the editor itself is what runs, it is Node with this alone.
        env: { ELECTRON_RUN_AS_NODE: '1' },
      }),
      '$laybook',
    );
    if (definition.command === 'check') task.group = vscode.TaskGroup.Test;
    return task;
  };
  return vscode.tasks.registerTaskProvider('laybook', {
    provideTasks: () =>
      (vscode.workspace.workspaceFolders ?? [])
        .filter(({ uri }) => uri.scheme === 'file')
        .map((folder) => made({ type: 'laybook', command: 'check' }, folder, t('check all recipes'))),
    resolveTask: ({ definition, scope, name }) =>
      isOurs(definition) ? made(definition, scope ?? vscode.TaskScope.Workspace, name) : undefined,
  });
}
