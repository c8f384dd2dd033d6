// Which VS Code runs the workbench tests: one named by LAYBOOK_VSCODE, a downloaded one where there are a screen and a
// network, else the headless one.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { downloadAndUnzipVSCode, resolveCliArgsFromVSCodeExecutablePath } from '@vscode/test-electron';
import { root } from '../paths.mjs';
import { installVsix } from './host.mjs';
import { installWorkbench, whyNot } from './install.mjs';

const releases = 'https://update.code.visualstudio.com/api/releases/stable';

async function canDownload() {
  const hasScreen = process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  if (!hasScreen) return false;
  return fetch(releases, { signal: AbortSignal.timeout(3000) }).then(
    (answer) => answer.ok,
    () => false,
  );
}

/** A desktop VS Code. */
function desktop(executable) {
  const install = (vsix, extensionsDir) => {
    const [cli, ...args] = resolveCliArgsFromVSCodeExecutablePath(executable);
    const result = spawnSync(cli, [...args, '--extensions-dir', extensionsDir, '--install-extension', vsix], {
      stdio: 'inherit',
      shell: process.platform === 'win32',
    });
    if (result.status !== 0) throw new Error(`install of ${vsix} failed`);
  };
  return { executable, install, headless: false };
}

function headless() {
  installWorkbench();
  const executable = path.join(root, 'tests/setup/workbench/vscode-headless.mjs');
  return { executable, install: installVsix, headless: true };
}

/** The workbench to use, or `{ reason }` when none can run here. */
export async function chooseWorkbench() {
  const wish = process.env.LAYBOOK_VSCODE;
  if (wish && wish !== 'download' && wish !== 'headless') return desktop(wish);
  if (wish === 'download' || (wish !== 'headless' && (await canDownload()))) {
    const cachePath = path.join(root, '.cache/vscode');
    return desktop(await downloadAndUnzipVSCode({ version: 'stable', cachePath }));
  }
  const reason = whyNot();
  if (reason) return { reason };
  try {
    return headless();
  } catch (error) {
    return { reason: `it could not be installed: ${error.message}` };
  }
}
