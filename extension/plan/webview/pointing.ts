/// <reference lib="dom" />
/// <reference lib="dom.iterable" />

/** What the pointer does to the page. */
export interface Pointed {
  drawing(): SVGSVGElement | null;
  zoomBy(factor: number, at: { x: number; y: number }): void;
  /** by shares of what is seen */
  moveBy(across: number, down: number): void;
  pick(key: string, open: boolean): void;
  chosen(): ReadonlySet<string>;
}

/** Pixels that a hand moves while it clicks. */
const still = 4;
/** One notch of a wheel. */
const notch = 1.0015;

/** Dragging moves the drawing, the wheel goes closer and farther, a click picks; the next click on the same place picks what lies below. */
export class Pointing {
  private readonly page: HTMLElement;
  private readonly pointed: Pointed;
  private from: { readonly id: number; x: number; y: number; dragged: boolean } | undefined;

  constructor(page: HTMLElement, pointed: Pointed) {
    this.page = page;
    this.pointed = pointed;
    page.addEventListener('pointerdown', (event) => this.down(event));
    page.addEventListener('pointermove', (event) => this.move(event));
    page.addEventListener('pointerup', (event) => this.up(event));
    page.addEventListener('pointercancel', () => this.end());
    page.addEventListener('wheel', (event) => this.wheel(event), { passive: false });
    page.addEventListener('dblclick', (event) => this.open(event));
  }

  private onDrawing({ target }: Event): SVGSVGElement | undefined {
    const drawing = this.pointed.drawing();
    return drawing !== null && target instanceof Node && drawing.contains(target) ? drawing : undefined;
  }

  private down(event: PointerEvent): void {
    if (event.button !== 0 || this.onDrawing(event) === undefined) return;
    this.from = { id: event.pointerId, x: event.clientX, y: event.clientY, dragged: false };
  }

  private move({ pointerId, clientX, clientY }: PointerEvent): void {
    const { from } = this;
    const drawing = this.pointed.drawing();
    if (from?.id !== pointerId || drawing === null) return;
    const [dx, dy] = [clientX - from.x, clientY - from.y];
    if (!from.dragged && Math.hypot(dx, dy) < still) return;
    if (!from.dragged) drawing.setPointerCapture(pointerId);
    const scale = drawing.getScreenCTM()?.a ?? 1;
    const { width, height } = drawing.viewBox.baseVal;
    this.pointed.moveBy(-dx / (scale * width), -dy / (scale * height));
    this.from = { id: pointerId, x: clientX, y: clientY, dragged: true };
    this.page.classList.add('dragging');
  }

  private up(event: PointerEvent): void {
    const { from } = this;
    if (from?.id !== event.pointerId) return;
    this.end();
    if (!from.dragged) this.click(event);
  }

  private end(): void {
    this.from = undefined;
    this.page.classList.remove('dragging');
  }

  private click({ clientX, clientY }: PointerEvent): void {
    const keys = keysAt(clientX, clientY);
    const at = keys.findIndex((key) => this.pointed.chosen().has(key));
    const key = keys[(at + 1) % Math.max(1, keys.length)];
    if (key !== undefined) this.pointed.pick(key, false);
  }

  private open(event: MouseEvent): void {
    if (this.onDrawing(event) === undefined) return;
    const keys = keysAt(event.clientX, event.clientY);
    const key = keys.find((each) => this.pointed.chosen().has(each)) ?? keys[0];
    if (key !== undefined) this.pointed.pick(key, true);
  }

  private wheel(event: WheelEvent): void {
    const drawing = this.onDrawing(event);
    const matrix = drawing?.getScreenCTM();
    if (drawing === undefined || !matrix) return;
    event.preventDefault();
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    this.pointed.zoomBy(notch ** event.deltaY, at);
  }
}

/** Things at a place on the screen, the foremost first, each once. */
function keysAt(x: number, y: number): readonly string[] {
  const keys = document.elementsFromPoint(x, y).flatMap((element) => {
    const key = element.closest<SVGElement>('[data-thing]')?.dataset.thing;
    return key === undefined ? [] : [key];
  });
  return [...new Set(keys)];
}
