import { Button } from 'react-aria-components';
import { pathText } from '../../core/quantity/index.ts';
import { type Field, type Group, keyOf, type MissingField } from '../store/fields.ts';
import { valueAt } from '../store/json.ts';
import type { ScreenIssue } from '../worker/messages.ts';
import { useDocument, useScreen, useWorkshop } from './context.ts';
import { FieldRow } from './FieldRow.tsx';
import { jumpToField } from './jump.ts';

const NONE: readonly ScreenIssue[] = [];

export function FieldOrGroup({ field }: { readonly field: Field }) {
  return field.type === 'group' ? <GroupSection group={field} /> : <FieldRow leaf={field} />;
}

/** A section of the file that opens and closes. */
function GroupSection({ group }: { readonly group: Group }) {
  const { screen } = useWorkshop();
  const key = keyOf(group);
  const isOpen = useScreen(({ opened }) => opened.has(key));
  const isSelected = useScreen(({ selected }) => selected === key);
  const issues = useScreen((state) => (state.issues.length === 0 ? NONE : state.issues));
  const inside = issues.filter(({ path }) => isAtOrIn(path, key));
  const own = inside.filter(({ path }) => !group.children.some((child) => isAtOrIn(path, keyOf(child))));
  const toggle = (): void =>
    screen.setState(({ opened }) => {
      const next = new Set(opened);
      if (!next.delete(key)) next.add(key);
      return { opened: next };
    });
  return (
    <div className={`group depth-${Math.min(group.path.length, 4)}`}>
      <Button
        id={`field:${key}`}
        className={isSelected ? 'group-head is-selected' : 'group-head'}
        aria-expanded={isOpen}
        onPress={toggle}
      >
        <span className="group-arrow" aria-hidden="true" />
        <span className="group-name">{group.label}</span>
        <GroupHint group={group} />
        {inside.length > 0 && <span className="count-bad">{inside.length} to mend</span>}
      </Button>
      {isOpen && (
        <div className="group-body">
          {group.description && <p className="hint">{group.description}</p>}
          {own.map(({ text, path }) => (
            <p key={`${path}${text}`} className="field-error">
              {path === key ? text : `${path.slice(key.length).replace(/^\./, '')}: ${text}`}
            </p>
          ))}
          {group.children.map((field) => (
            <FieldOrGroup key={keyOf(field)} field={field} />
          ))}
          {group.missing.length > 0 && <AddField group={group} />}
        </div>
      )}
    </div>
  );
}

/** What is inside, in a word or two, while it is closed. */
function GroupHint({ group }: { readonly group: Group }) {
  const value = useDocument(({ file }) => valueAt(file, group.path));
  if (!Array.isArray(value) && group.children.some(({ type }) => type === 'leaf')) {
    const said = group.children.find(
      (child) =>
        child.type === 'leaf' && ['name', 'kind', 'recipe', 'size'].includes(String(child.path.at(-1))),
    );
    return said?.type === 'leaf' ? <span className="group-hint">{String(said.value)}</span> : null;
  }
  return <span className="group-hint">{group.children.length}</span>;
}

function AddField({ group }: { readonly group: Group }) {
  const workshop = useWorkshop();
  const add = (field: MissingField): void => {
    const path = [...group.path, field.key];
    workshop.document.setValue(path, field.start, `add ${pathText(path)}`);
    // The field is there after the next drawing of the tree.
    setTimeout(() => jumpToField(workshop, pathText(path)));
  };
  return (
    <label className="add-field">
      <span className="add-label">Add a field</span>
      <select
        value=""
        onChange={(event) => {
          const field = group.missing.find(({ key }) => key === event.target.value);
          if (field) add(field);
        }}
      >
        <option value="">{group.missing.length} not used here …</option>
        {group.missing.map(({ key, label, description }) => (
          <option key={key} value={key} title={description}>
            {label}
          </option>
        ))}
      </select>
    </label>
  );
}

const isAtOrIn = (path: string, key: string): boolean =>
  path === key || path.startsWith(`${key}.`) || path.startsWith(`${key}[`);
