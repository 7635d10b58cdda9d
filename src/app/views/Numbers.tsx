import { useEffect, useMemo, useRef } from 'react';
import { Input, Label, SearchField } from 'react-aria-components';
import { pathText } from '../../core/quantity/index.ts';
import { type Field, fieldsOf, type Group, keyOf, type Leaf, leavesOf } from '../store/fields.ts';
import { useDocument, useScreen, useWorkshop } from './context.ts';
import { FieldRow } from './FieldRow.tsx';
import { FieldOrGroup } from './GroupSection.tsx';

/** More than these are no answer to a search but the whole file again. */
const MOST_FOUND = 60;

/** The whole build file as fields: everything that was typed can be found and changed here. */
export function Numbers() {
  const { screen } = useWorkshop();
  const schema = useScreen((state) => state.schema);
  const search = useScreen((state) => state.fieldSearch);
  const file = useDocument((state) => state.file);
  const tree = useMemo(() => (schema ? fieldsOf(schema, file) : undefined), [schema, file]);
  const found = useMemo(() => (tree && search.trim() ? foundIn(tree, search) : undefined), [tree, search]);
  useWish(tree);
  return (
    <section className="numbers" aria-label="Numbers of the build">
      <SearchField
        className="search"
        value={search}
        onChange={(fieldSearch) => screen.setState({ fieldSearch })}
      >
        <Label>Find a number</Label>
        <Input placeholder="wheelbase, hub, teeth …" />
      </SearchField>
      <div className="fields">
        {!tree && <p className="hint">Reading the build file …</p>}
        {tree && !found && tree.children.map((field) => <FieldOrGroup key={keyOf(field)} field={field} />)}
        {found && (
          <>
            <p className="hint" role="status">
              {found.length === 0
                ? 'No field is called that.'
                : `${found.length} ${found.length === 1 ? 'field' : 'fields'}${found.length > MOST_FOUND ? `, the first ${MOST_FOUND} shown` : ''}`}
            </p>
            {found.slice(0, MOST_FOUND).map((leaf) => (
              <FieldRow key={keyOf(leaf)} leaf={leaf} withPath />
            ))}
          </>
        )}
      </div>
    </section>
  );
}

function foundIn(tree: Group, search: string): readonly Leaf[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  return leavesOf(tree).filter((leaf) => {
    const text =
      `${pathText(leaf.path)} ${leaf.label} ${leaf.description ?? ''} ${String(leaf.value)}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
}

/** Opens, scrolls to and focuses the field that another view asked for, or what is nearest to it. */
function useWish(tree: Group | undefined): void {
  const { screen } = useWorkshop();
  const wish = useScreen((state) => state.wish);
  const done = useRef(0);
  useEffect(() => {
    if (!wish || !tree || wish.number === done.current) return;
    done.current = wish.number;
    const way = wayTo(tree, wish.path);
    const target = way.at(-1);
    if (!target) return;
    screen.setState(({ opened }) => ({
      opened: new Set([...opened, ...way.filter(({ type }) => type === 'group').map(keyOf)]),
    }));
    // Once the groups are open and drawn.
    requestAnimationFrame(() => {
      const element = document.getElementById(`field:${keyOf(target)}`);
      // A group from its head, so that what is in it is seen.
      element?.scrollIntoView({ block: target.type === 'group' ? 'start' : 'center' });
      element?.focus({ preventScroll: true });
    });
  }, [wish, tree, screen]);
}

/** Fields from the outermost group down to the field at a path, as far as there are any. */
function wayTo(group: Group, path: string): readonly Field[] {
  const next = group.children.find((child) => {
    const key = keyOf(child);
    return path === key || path.startsWith(`${key}.`) || path.startsWith(`${key}[`);
  });
  if (!next) return [];
  return next.type === 'group' ? [next, ...wayTo(next, path)] : [next];
}
