/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/** The page of paper: shows what the editor sends. Nothing in it runs; its words come escaped from the server. */
interface Editor {
  postMessage(message: 'ready'): void;
  setState(state: unknown): void;
}
declare function acquireVsCodeApi(): Editor;

const editor = acquireVsCodeApi();
const page = document.querySelector('#paper') as HTMLElement;
const style = new CSSStyleSheet();
document.adoptedStyleSheets = [style];

let version = -1;
let shown: readonly (string | undefined)[] = [];

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (typeof data !== 'object' || data === null) return;
  const { version: next, body, style: css, nothing, about } = data as Readonly<Record<string, unknown>>;
  if (typeof next !== 'number' || next <= version) return;
  version = next;
  editor.setState(about);
  const text = (given: unknown): string | undefined => (typeof given === 'string' ? given : undefined);
  const now = [text(css), text(body), text(nothing)];
  if (now.every((each, i) => each === shown[i])) return;
  if (now[0] !== shown[0]) style.replaceSync(now[0] ?? '');
  shown = now;
  if (now[1] !== undefined) show(now[1]);
  else page.textContent = now[2] ?? '';
});

/** Block by block: what stays the same is not touched, so that the page neither jumps nor flickers. */
function show(body: string): void {
  const made = new DOMParser().parseFromString(body, 'text/html').body;
  const next = [...made.children];
  for (const [i, element] of next.entries()) {
    const there = page.children[i];
    if (there === undefined) page.append(element);
    else if (there.outerHTML !== element.outerHTML) there.replaceWith(element);
  }
  for (const element of [...page.children].slice(next.length)) element.remove();
  for (const node of [...page.childNodes]) if (node.nodeType === Node.TEXT_NODE) node.remove();
}

editor.postMessage('ready');
