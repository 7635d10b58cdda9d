/** A piece to be cut [m]. */
export interface CutPiece {
  readonly id: string;
  readonly length: number;
}

/** A bar on hand, or to be bought [m]. */
export interface StockBar {
  readonly length: number;
  /** How many there are; left out: as many as needed. */
  readonly count?: number;
}

/** One bar with what is cut from it, in order from one end. */
export interface BarPlan {
  readonly bar: number;
  readonly pieces: readonly CutPiece[];
  /** What is left after all cuts [m]. */
  readonly left: number;
}

export interface CuttingPlan {
  readonly bars: readonly BarPlan[];
  /** Pieces that no bar on hand can give. */
  readonly missing: readonly CutPiece[];
}

/** Search steps before the best plan found so far is taken; a frame has a dozen pieces and needs far fewer. */
const MAX_STEPS = 200_000;
/** Offcuts this near are equal [m]. */
const EQUAL = 1e-9;

/**
 * Cuts pieces from bars so that as many pieces as can be had come out, the fewest bars are begun for them and, among
 * those plans, the longest single offcut is left: one long leftover is worth more than many short ones. Each cut takes
 * a kerf; a piece cut to the very end needs none. Longest pieces first, depth first with bounds, exact for the sizes
 * of a frame; past `MAX_STEPS` the best so far.
 * @source derived, exhaustive search with bounds
 */
export function planCuts(pieces: readonly CutPiece[], stock: readonly StockBar[], kerf: number): CuttingPlan {
  const longest = Math.max(0, ...stock.map((bar) => bar.length));
  const missing = pieces.filter((piece) => piece.length > longest);
  const todo = pieces
    .filter((piece) => piece.length <= longest)
    .toSorted((a, b) => b.length - a.length || a.id.localeCompare(b.id));
  const best = new Search(todo, sizesFor(todo, stock), kerf).run();
  const placed = new Set(best.flatMap((bar) => bar.pieces));
  return { bars: best, missing: [...missing, ...todo.filter((piece) => !placed.has(piece))] };
}

interface BarSize {
  readonly length: number;
  /** Bars of it that are not begun. */
  free: number;
}

/** Sizes of bar that could be begun, longest first; an uncounted size offers one bar for each piece. */
function sizesFor(pieces: readonly CutPiece[], stock: readonly StockBar[]): readonly BarSize[] {
  const lengths = [...new Set(stock.map((bar) => bar.length))].toSorted((a, b) => b - a);
  return lengths.map((length) => {
    const counts = stock.filter((bar) => bar.length === length).map((bar) => bar.count ?? pieces.length);
    return {
      length,
      free: Math.min(
        pieces.length,
        counts.reduce((sum, count) => sum + count, 0),
      ),
    };
  });
}

interface OpenBar {
  readonly bar: number;
  readonly pieces: CutPiece[];
  left: number;
}

/** One search; holds the plan under way and the best so far. */
class Search {
  readonly #pieces: readonly CutPiece[];
  readonly #sizes: readonly BarSize[];
  readonly #kerf: number;
  /** Length of the pieces from each on, without kerfs [m]. */
  readonly #lengthFrom: readonly number[];
  readonly #open: OpenBar[] = [];
  #best: readonly BarPlan[] = [];
  #bestPlaced = -1;
  #bestOffcut = -1;
  #steps = 0;

  constructor(pieces: readonly CutPiece[], sizes: readonly BarSize[], kerf: number) {
    this.#pieces = pieces;
    this.#sizes = sizes;
    this.#kerf = kerf;
    this.#lengthFrom = [...pieces, undefined].map((_, at) =>
      pieces.slice(at).reduce((sum, piece) => sum + piece.length, 0),
    );
  }

  run(): readonly BarPlan[] {
    this.#visit(0, 0);
    return this.#best;
  }

  #visit(at: number, placed: number): void {
    this.#steps += 1;
    if (this.#steps > MAX_STEPS || this.#cannotImprove(at, placed)) return;
    const piece = this.#pieces[at];
    if (!piece) {
      this.#keepBetter(placed);
      return;
    }
    this.#intoBegunBars(piece, () => this.#visit(at + 1, placed + 1));
    this.#intoNewBars(piece, () => this.#visit(at + 1, placed + 1));
    // Where the bars do not give all, a long piece may have to make room for two short ones.
    this.#visit(at + 1, placed);
  }

  #intoBegunBars(piece: CutPiece, next: () => void): void {
    const tried = new Set<number>();
    for (const bar of this.#open) {
      if (bar.left < piece.length || tried.has(bar.left)) continue;
      tried.add(bar.left);
      const before = bar.left;
      bar.pieces.push(piece);
      bar.left = afterCut(before, piece.length, this.#kerf);
      next();
      bar.pieces.pop();
      bar.left = before;
    }
  }

  #intoNewBars(piece: CutPiece, next: () => void): void {
    for (const size of this.#sizes) {
      if (size.free === 0 || size.length < piece.length) continue;
      size.free -= 1;
      const left = afterCut(size.length, piece.length, this.#kerf);
      this.#open.push({ bar: size.length, pieces: [piece], left });
      next();
      this.#open.pop();
      size.free += 1;
    }
  }

  /** No plan from here gives more pieces, nor as many from fewer bars, nor those with a longer offcut. */
  #cannotImprove(at: number, placed: number): boolean {
    const most = placed + this.#pieces.length - at;
    if (most !== this.#bestPlaced) return most < this.#bestPlaced;
    const room = this.#open.reduce((sum, bar) => sum + bar.left, 0);
    const longest = this.#sizes[0]?.length ?? Number.POSITIVE_INFINITY;
    const more = Math.max(0, Math.ceil((this.#lengthFrom[at]! - room) / longest - EQUAL));
    const bars = this.#open.length + more;
    if (bars !== this.#best.length) return bars > this.#best.length;
    return more === 0 && this.#offcut() <= this.#bestOffcut + EQUAL;
  }

  #keepBetter(placed: number): void {
    this.#best = this.#open.map((bar) => ({ bar: bar.bar, pieces: [...bar.pieces], left: bar.left }));
    this.#bestPlaced = placed;
    this.#bestOffcut = this.#offcut();
  }

  #offcut(): number {
    return this.#open.reduce((longest, bar) => Math.max(longest, bar.left), 0);
  }
}

/** A cut that leaves less than a kerf leaves nothing. */
const afterCut = (left: number, piece: number, kerf: number): number => Math.max(0, left - piece - kerf);
