import { pathText } from '../../core/quantity/index.ts';
import { findPart } from '../store/findPart.ts';
import type { Workshop } from './context.ts';
import { NARROW } from './useNarrow.ts';

let wishes = 0;

/** Opens the field at a path, on a narrow screen by going to the numbers. */
export function jumpToField({ screen }: Workshop, path: string): void {
  wishes += 1;
  const isNarrow = window.matchMedia(NARROW).matches;
  screen.setState({
    wish: { path, number: wishes },
    selected: path,
    fieldSearch: '',
    ...(isNarrow ? { view: 'numbers' } : {}),
  });
}

/** Path text of the field that a part is made from, where the file has one. */
export function pathOfPart({ document }: Workshop, part: string): string | undefined {
  const path = findPart(document.store.getState().file, part);
  return path && pathText(path);
}
