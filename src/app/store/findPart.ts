import { isObject, type Json, type Path } from './json.ts';

/** Longest search; a build file has about a thousand values. */
const MOST_VALUES = 20_000;

/**
 * Where a part that the core names stands in the file: `frame.tubes.rail`, `stacks.rear.hub`, `first`, `rail.right`.
 * Each name is looked for as a key, or as the `id` of a list's item, nearest to where the name before it was found.
 * A mirrored part is the entry that it mirrors.
 */
export function findPart(file: Json, part: string): Path | undefined {
  const names = part
    .split('.')
    .filter((name, i, all) => name !== '' && !(i === all.length - 1 && i > 0 && name === 'right'));
  let path: Path | undefined;
  let at: Json = file;
  for (const name of names) {
    const found = nearestNamed(at, name);
    if (found === undefined) return path;
    path = [...(path ?? []), ...found.path];
    at = found.value;
  }
  return path;
}

interface Found {
  readonly path: Path;
  readonly value: Json;
}

/** Breadth first, so that a section wins over a field of the same name deep inside another. */
function nearestNamed(root: Json, name: string): Found | undefined {
  const queue: Found[] = [{ path: [], value: root }];
  for (let i = 0; i < queue.length && i < MOST_VALUES; i++) {
    const { path, value } = queue[i]!;
    for (const [step, child] of childrenOf(value)) {
      const found = { path: [...path, step], value: child };
      if (step === name || (isObject(child) && child.id === name)) return found;
      queue.push(found);
    }
  }
  return undefined;
}

function childrenOf(value: Json): readonly (readonly [string | number, Json])[] {
  if (Array.isArray(value)) return value.map((item, i) => [i, item] as const);
  return isObject(value) ? Object.entries(value) : [];
}
