import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const read = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
const keys = new Set(Object.keys(JSON.parse(read('data/sources.json'))));
const tables = readdirSync(join(ROOT, 'data/standards')).filter((name) => name.endsWith('.json'));

/** Every { key, where } within a JSON value. */
function references(value: unknown): { readonly key: unknown; readonly where: unknown }[] {
  if (typeof value !== 'object' || value === null) return [];
  const inner = Object.values(value).flatMap(references);
  return 'key' in value && 'where' in value ? [{ key: value.key, where: value.where }, ...inner] : inner;
}

describe('sources', () => {
  test('there are tables to look at', () => {
    expect(tables.length).toBeGreaterThan(0);
  });

  test.each(tables)('%s names sources, and only listed ones, each with its place', (name) => {
    const found = references(JSON.parse(read(`data/standards/${name}`)));
    expect(found.length).toBeGreaterThan(0);
    expect(found.filter(({ key }) => !keys.has(String(key)))).toEqual([]);
    expect(found.filter(({ where }) => typeof where !== 'string' || where === '')).toEqual([]);
  });

  test('the code names only listed sources', () => {
    const files = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' }).filter(
      (name) => /\.tsx?$/.test(name) && !name.includes('.test.'),
    );
    const used = files.flatMap((name) =>
      [...read(join('src', name)).matchAll(/key: '([a-z0-9-]+)',\s*where:/g)].map((match) => ({
        name,
        key: match[1],
      })),
    );
    expect(used.length).toBeGreaterThan(0);
    expect(used.filter(({ key }) => !keys.has(String(key)))).toEqual([]);
  });
});
