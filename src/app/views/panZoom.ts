interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Enlargement against the whole drawing, at least and at most. */
const LEAST = 0.5;
const MOST = 60;
/** A pointer that moved less than this was a tap [px]. */
const TAP = 6;
const WHEEL = 0.0015;

/** Moves and enlarges the SVG in an element by its view box; tells the part under a tap. */
export class PanZoom {
  readonly #element: HTMLElement;
  readonly #onPart: (part: string) => void;
  readonly #pointers = new Map<number, { x: number; y: number }>();
  readonly #ended = new AbortController();
  #svg: SVGSVGElement | undefined;
  #whole: Box = { x: 0, y: 0, width: 1, height: 1 };
  #box: Box = this.#whole;
  #subject = '';
  #moved = 0;

  constructor(element: HTMLElement, onPart: (part: string) => void) {
    this.#element = element;
    this.#onPart = onPart;
    const signal = this.#ended.signal;
    element.addEventListener('pointerdown', (event) => this.#down(event), { signal });
    element.addEventListener('pointermove', (event) => this.#move(event), { signal });
    element.addEventListener('pointerup', (event) => this.#up(event), { signal });
    element.addEventListener('pointercancel', (event) => this.#pointers.delete(event.pointerId), { signal });
    element.addEventListener('wheel', (event) => this.#wheel(event), { signal, passive: false });
  }

  /** The same subject drawn anew keeps its enlargement; true when it is another one. */
  show(svg: string, subject: string, label: string): boolean {
    const isOther = subject !== this.#subject;
    const isWhole = this.#box === this.#whole || isOther;
    this.#element.innerHTML = svg;
    const element = this.#element.querySelector('svg');
    if (!element) throw new Error('a drawing without an svg');
    const { x, y, width, height } = element.viewBox.baseVal;
    this.#svg = element;
    this.#subject = subject;
    this.#whole = { x, y, width, height };
    if (isWhole) this.#box = this.#whole;
    element.setAttribute('width', '100%');
    element.setAttribute('height', '100%');
    element.setAttribute('aria-label', label);
    this.#apply();
    return isOther;
  }

  mark(parts: ReadonlySet<string>): void {
    for (const item of this.#element.querySelectorAll('[data-part]'))
      item.classList.toggle('is-marked', parts.has(item.getAttribute('data-part') ?? ''));
  }

  fit(): void {
    this.#box = this.#whole;
    this.#apply();
  }

  /** A page as wide as the screen, from its head: its text can then be read. */
  fitWidth(): void {
    const { clientWidth, clientHeight } = this.#element;
    const height = (this.#whole.width * clientHeight) / Math.max(clientWidth, 1);
    if (height < this.#whole.height) this.#set({ ...this.#whole, height });
    else this.fit();
  }

  /** By shares of what is seen. */
  pan(right: number, down: number): void {
    this.#set({
      ...this.#box,
      x: this.#box.x + right * this.#box.width,
      y: this.#box.y + down * this.#box.height,
    });
  }

  /** About a point of the drawing, else about the middle. */
  zoom(factor: number, about?: { readonly x: number; readonly y: number }): void {
    const now = this.#box;
    const most = this.#whole.width / LEAST;
    const width = Math.min(Math.max(now.width / factor, this.#whole.width / MOST), most);
    const share = width / now.width;
    const at = about ?? { x: now.x + now.width / 2, y: now.y + now.height / 2 };
    this.#set({
      x: at.x + (now.x - at.x) * share,
      y: at.y + (now.y - at.y) * share,
      width,
      height: now.height * share,
    });
  }

  dispose(): void {
    this.#ended.abort();
  }

  #set(box: Box): void {
    this.#box = box;
    this.#apply();
  }

  #apply(): void {
    const { x, y, width, height } = this.#box;
    this.#svg?.setAttribute('viewBox', `${x} ${y} ${width} ${height}`);
  }

  #place(event: { readonly clientX: number; readonly clientY: number }): { x: number; y: number } {
    const matrix = this.#svg?.getScreenCTM()?.inverse();
    return matrix
      ? new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix)
      : { x: event.clientX, y: event.clientY };
  }

  #down(event: PointerEvent): void {
    if (event.button !== 0) return;
    if (this.#pointers.size === 0) this.#moved = 0;
    this.#pointers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    this.#element.setPointerCapture(event.pointerId);
  }

  #move(event: PointerEvent): void {
    const before = this.#pointers.get(event.pointerId);
    if (!before) return;
    const after = { x: event.clientX, y: event.clientY };
    this.#moved += Math.hypot(after.x - before.x, after.y - before.y);
    const [from, to] = [this.#place({ clientX: before.x, clientY: before.y }), this.#place(event)];
    const [other] = [...this.#pointers].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
    if (other) {
      const spread = (at: { x: number; y: number }): number => Math.hypot(at.x - other.x, at.y - other.y);
      const middle = { clientX: (after.x + other.x) / 2, clientY: (after.y + other.y) / 2 };
      if (spread(before) > 0) this.zoom(spread(after) / spread(before), this.#place(middle));
    } else this.#set({ ...this.#box, x: this.#box.x - (to.x - from.x), y: this.#box.y - (to.y - from.y) });
    this.#pointers.set(event.pointerId, after);
  }

  #up(event: PointerEvent): void {
    const wasDown = this.#pointers.delete(event.pointerId);
    if (!wasDown || this.#moved > TAP) return;
    const hit = document.elementFromPoint(event.clientX, event.clientY)?.closest('[data-part]');
    const part = hit?.getAttribute('data-part');
    if (part) this.#onPart(part);
  }

  #wheel(event: WheelEvent): void {
    event.preventDefault();
    this.zoom(Math.exp(-event.deltaY * WHEEL), this.#place(event));
  }
}
