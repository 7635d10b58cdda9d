/**
 * Path of the first thing in `data` that would make the schema library throw, or undefined for honest data:
 * - a `length` that cannot be compared: the library compares it with the limit of a list before it settles
 *   the type, and `{"length": {"toString": 1}}` makes any comparison throw;
 * - an object that is not plain, as a careless JSON parser makes of a `__proto__` key: the library reads the
 *   name of its constructor for a message.
 */
export function hostilePlace(data: unknown): readonly PropertyKey[] | undefined {
  const open: { readonly value: unknown; readonly path: readonly PropertyKey[] }[] = [
    { value: data, path: [] },
  ];
  const seen = new Set<unknown>();
  for (let place = open.pop(); place; place = open.pop()) {
    const { value, path } = place;
    if (typeof value !== 'object' || value === null || seen.has(value)) continue;
    seen.add(value);
    if (!isPlain(value)) return path;
    for (const [key, child] of Object.entries(value)) {
      if (typeof child !== 'object' || child === null) continue;
      const childPath = [...path, Array.isArray(value) ? Number(key) : key];
      if (key === 'length' && !isComparable(child)) return childPath;
      open.push({ value: child, path: childPath });
    }
  }
  return undefined;
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return Array.isArray(value) ? prototype === Array.prototype : prototype === Object.prototype;
}

function isComparable(value: object): boolean {
  try {
    Number(value);
    return true;
  } catch {
    return false;
  }
}
