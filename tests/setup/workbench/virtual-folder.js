// An extension of the tests: a folder in memory, under the scheme `workshop`.
const vscode = require('vscode');

const texts = __FILES__;
const files = new Map(Object.entries(texts).map(([name, text]) => [name, new TextEncoder().encode(text)]));
const folders = new Set(['/']);
for (const name of files.keys()) addFolders(name);
const changed = new vscode.EventEmitter();
const born = Date.now();

function addFolders(name) {
  const parts = name.split('/').slice(1, -1);
  for (let length = 1; length <= parts.length; length++) folders.add(`/${parts.slice(0, length).join('/')}`);
}

function stat({ path }) {
  if (files.has(path)) return { type: vscode.FileType.File, ctime: born, mtime: born, size: files.get(path).length };
  if (folders.has(path)) return { type: vscode.FileType.Directory, ctime: born, mtime: born, size: 0 };
  throw vscode.FileSystemError.FileNotFound(path);
}

function readDirectory({ path }) {
  const start = path === '/' ? '/' : `${path}/`;
  const inside = (name) => name.startsWith(start) && name !== path && !name.slice(start.length).includes('/');
  const named = (names, type) => [...names].filter(inside).map((name) => [name.slice(start.length), type]);
  return [...named(files.keys(), vscode.FileType.File), ...named(folders, vscode.FileType.Directory)];
}

const tell = (uri, type) => changed.fire([{ uri, type }]);

const provider = {
  onDidChangeFile: changed.event,
  watch: () => new vscode.Disposable(() => {}),
  stat,
  readDirectory,
  readFile({ path }) {
    const bytes = files.get(path);
    if (bytes === undefined) throw vscode.FileSystemError.FileNotFound(path);
    return bytes;
  },
  writeFile(uri, bytes) {
    const known = files.has(uri.path);
    files.set(uri.path, bytes);
    addFolders(uri.path);
    tell(uri, known ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created);
  },
  createDirectory({ path }) {
    addFolders(`${path}/.`);
  },
  delete(uri) {
    files.delete(uri.path);
    tell(uri, vscode.FileChangeType.Deleted);
  },
  rename(from, to) {
    files.set(to.path, files.get(from.path));
    files.delete(from.path);
    tell(from, vscode.FileChangeType.Deleted);
    tell(to, vscode.FileChangeType.Created);
  },
};

exports.activate = (context) => {
  context.subscriptions.push(
    vscode.workspace.registerFileSystemProvider('workshop', provider, { isCaseSensitive: true }),
  );
};
