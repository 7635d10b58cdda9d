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

/**
 * Cuts pieces from bars so that the fewest bars are begun and, among those plans, the longest single offcut is left:
 * one long leftover is worth more than many short ones. Each cut takes a kerf; a piece cut to the very end needs none.
 * Longest pieces first, depth first with bounds, exact for the sizes of a frame; past `MAX_STEPS` the best so far.
 * @source derived, exhaustive search with bounds
 */
export function planCuts(pieces: readonly CutPiece[], stock: readonly StockBar[], kerf: number): CuttingPlan {
  const longest = Math.max(0, ...stock.map((bar) => bar.length));
  const missing = pieces.filter((piece) => piece.length > longest);
  const todo = pieces
    .filter((piece) => piece.length <= longest)
    .toSorted((a, b) => b.length - a.length || a.id.localeCompare(b.id));
  const bars = barsFor(todo, stock);
  const best = search(todo, bars, kerf);
  const placed = new Set(best.flatMap((bar) => bar.pieces));
  return { bars: best, missing: [...missing, ...todo.filter((piece) => !placed.has(piece))] };
}

/** Bars that could be begun, longest first; an uncounted size offers one for each piece. */
function barsFor(pieces: readonly CutPiece[], stock: readonly StockBar[]): readonly number[] {
  return stock
    .flatMap((bar) =>
      Array.from({ length: Math.min(bar.count ?? pieces.length, pieces.length) }, () => bar.length),
    )
    .toSorted((a, b) => b - a);
}

interface OpenBar {
  readonly bar: number;
  readonly pieces: CutPiece[];
  left: number;
}

interface Best {
  plan: readonly BarPlan[];
  placed: number;
  bars: number;
  offcut: number;
}

function search(pieces: readonly CutPiece[], bars: readonly number[], kerf: number): readonly BarPlan[] {
  const open: OpenBar[] = [];
  const best: Best = { plan: [], placed: -1, bars: Number.POSITIVE_INFINITY, offcut: -1 };
  let steps = 0;
  const visit = (at: number, placed: number, nextBar: number): void => {
    steps += 1;
    if (steps > MAX_STEPS || placed + (pieces.length - at) < best.placed) return;
    const piece = pieces[at];
    if (!piece) {
      keepBetter(best, open, placed);
      return;
    }
    const tried = new Set<number>();
    for (const bar of open) {
      if (bar.left < piece.length || tried.has(bar.left)) continue;
      tried.add(bar.left);
      const before = bar.left;
      bar.pieces.push(piece);
      bar.left = afterCut(before, piece.length, kerf);
      visit(at + 1, placed + 1, nextBar);
      bar.pieces.pop();
      bar.left = before;
    }
    const size = bars[nextBar];
    const worse = placed + (pieces.length - at) === best.placed && open.length + 1 > best.bars;
    if (size !== undefined && size >= piece.length && !worse) {
      open.push({ bar: size, pieces: [piece], left: afterCut(size, piece.length, kerf) });
      visit(at + 1, placed + 1, nextBar + 1);
      open.pop();
    }
    const anyRoom = tried.size > 0 || (size !== undefined && size >= piece.length);
    if (!anyRoom) visit(at + 1, placed, nextBar);
  };
  visit(0, 0, 0);
  return best.plan;
}

/** A cut that leaves less than a kerf leaves nothing. */
const afterCut = (left: number, piece: number, kerf: number): number => Math.max(0, left - piece - kerf);

function keepBetter(best: Best, open: readonly OpenBar[], placed: number): void {
  const offcut = Math.max(0, ...open.map((bar) => bar.left));
  const better =
    placed > best.placed ||
    (placed === best.placed &&
      (open.length < best.bars || (open.length === best.bars && offcut > best.offcut + 1e-9)));
  if (!better) return;
  best.plan = open.map((bar) => ({ bar: bar.bar, pieces: [...bar.pieces], left: bar.left }));
  best.placed = placed;
  best.bars = open.length;
  best.offcut = offcut;
}
