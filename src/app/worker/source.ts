import sources from '../../../data/sources.json' with { type: 'json' };
import type { SourceRef } from '../../core/quantity/index.ts';
import type { ScreenSource } from './messages.ts';

const titles = sources as Readonly<Record<string, { readonly title: string; readonly edition?: string }>>;

/** A source by its title. */
export function screenSource({ key, where }: SourceRef): ScreenSource {
  const source = Object.hasOwn(titles, key) ? titles[key] : undefined;
  if (source === undefined) return { title: key, where };
  return { title: source.edition ? `${source.title}, ${source.edition}` : source.title, where };
}
