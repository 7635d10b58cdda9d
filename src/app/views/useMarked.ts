import { useMemo } from 'react';
import { pathText } from '../../core/quantity/index.ts';
import { findPart } from '../store/findPart.ts';
import { useDocument, useScreen } from './context.ts';

/** Of these parts, those that belong to the field being worked on. */
export function useMarked(parts: readonly string[]): ReadonlySet<string> {
  const selected = useScreen((state) => state.selected);
  const file = useDocument((state) => state.file);
  return useMemo(() => {
    if (selected === undefined) return new Set<string>();
    return new Set(
      parts.filter((part) => {
        const path = findPart(file, part);
        const text = path && pathText(path);
        // A whole section would mark half the bike; only what is named in it is a part.
        return path !== undefined && path.length > 1 && text !== undefined && isPartOf(selected, text);
      }),
    );
  }, [parts, selected, file]);
}

const isPartOf = (field: string, part: string): boolean =>
  field === part || field.startsWith(`${part}.`) || field.startsWith(`${part}[`);
