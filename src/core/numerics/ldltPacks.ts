import type { LdltFactor } from './ldlt.ts';

/** Right-hand sides that go through the factor together: each of its entries is read once for all of them. */
const WIDTH = 4;

/**
 * x with A·x = b for many b; rows of null modes stay at 0. Each answer is to the last digit the one that its b
 * gets alone.
 * @source bathe-1996, section 8.2.3
 */
export function solveLdltAll(factor: LdltFactor, columns: readonly Float64Array[]): Float64Array[] {
  const pack = new Float64Array(factor.size * WIDTH);
  const solved: Float64Array[] = [];
  for (let at = 0; at < columns.length; at += WIDTH) {
    const some = columns.slice(at, at + WIDTH);
    pack.fill(0);
    some.forEach((column, k) => {
      for (let i = 0; i < factor.size; i++) pack[i * WIDTH + k] = column[i]!;
    });
    substituteForward(factor, pack);
    divideByPivots(factor, pack);
    substituteBack(factor, pack);
    some.forEach((_, k) => {
      const x = new Float64Array(factor.size);
      for (let i = 0; i < factor.size; i++) x[i] = pack[i * WIDTH + k]!;
      solved.push(x);
    });
  }
  return solved;
}

function substituteForward({ size, top, start, values }: LdltFactor, x: Float64Array): void {
  for (let j = 1; j < size; j++) {
    const first = top[j]!;
    const offset = start[j]! - first;
    const own = j * WIDTH;
    let a = x[own]!;
    let b = x[own + 1]!;
    let c = x[own + 2]!;
    let d = x[own + 3]!;
    for (let i = first; i < j; i++) {
      const entry = values[offset + i]!;
      const at = i * WIDTH;
      a -= entry * x[at]!;
      b -= entry * x[at + 1]!;
      c -= entry * x[at + 2]!;
      d -= entry * x[at + 3]!;
    }
    x[own] = a;
    x[own + 1] = b;
    x[own + 2] = c;
    x[own + 3] = d;
  }
}

function divideByPivots({ size, start, values }: LdltFactor, x: Float64Array): void {
  for (let j = 0; j < size; j++) {
    const pivot = values[start[j + 1]! - 1]!;
    for (let at = j * WIDTH; at < (j + 1) * WIDTH; at++) x[at] = x[at]! / pivot;
  }
}

function substituteBack({ size, top, start, values }: LdltFactor, x: Float64Array): void {
  for (let j = size - 1; j > 0; j--) {
    const first = top[j]!;
    const offset = start[j]! - first;
    const own = j * WIDTH;
    const a = x[own]!;
    const b = x[own + 1]!;
    const c = x[own + 2]!;
    const d = x[own + 3]!;
    for (let i = first; i < j; i++) {
      const entry = values[offset + i]!;
      const at = i * WIDTH;
      x[at] = x[at]! - entry * a;
      x[at + 1] = x[at + 1]! - entry * b;
      x[at + 2] = x[at + 2]! - entry * c;
      x[at + 3] = x[at + 3]! - entry * d;
    }
  }
}
