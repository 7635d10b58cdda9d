import type { JsonObject } from '../store/json.ts';

const files = import.meta.glob<JsonObject>('../../../demo/*.build.json', { import: 'default' });

/** A build that comes with the program. */
export interface Demo {
  readonly name: string;
  readonly label: string;
  readonly load: () => Promise<JsonObject>;
}

export const demos: readonly Demo[] = Object.entries(files).map(([path, load]) => {
  const name = path.slice(path.lastIndexOf('/') + 1);
  return { name, label: `Demo: ${name.replace('.build.json', '')}`, load };
});

/** Opened on a first visit. */
export const firstDemo: Demo = demos.find(({ name }) => name.startsWith('light')) ?? demos[0]!;
