import { useId, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { pathText } from '../../core/quantity/index.ts';
import { keyOf, type Leaf } from '../store/fields.ts';
import type { Json } from '../store/json.ts';
import { useScreen, useWorkshop } from './context.ts';
import { type Entry, FieldEntry } from './FieldEntry.tsx';

let visits = 0;

interface FieldRowProps {
  readonly leaf: Leaf;
  /** Say where in the file it stands, as in a list of finds. */
  readonly withPath?: boolean;
}

/** One value of the file with its name, unit, meaning and errors. */
export function FieldRow({ leaf, withPath = false }: FieldRowProps) {
  const { document, screen } = useWorkshop();
  const key = keyOf(leaf);
  const id = useId();
  const session = useRef('');
  const errors = useScreen((state) => errorsAt(state.issues, key));
  const isSelected = useScreen((state) => state.selected === key);
  const [isTyping, setTyping] = useState(false);

  const entry: Entry = {
    id: `field:${key}`,
    leaf,
    describedBy: `${id}-about`,
    isInvalid: errors !== '',
    onFocus: () => {
      visits += 1;
      session.current = `${key} ${visits}`;
      setTyping(true);
      screen.setState({ selected: key });
    },
    onBlur: () => setTyping(false),
    onValue: (value: Json) => document.setValue(leaf.path, value, session.current),
  };
  const about = [unitHint(leaf), leaf.description].filter(Boolean).join(' ');
  return (
    <div className={`field${isSelected ? ' is-selected' : ''}${errors ? ' is-wrong' : ''}`}>
      <label className="field-label" htmlFor={entry.id}>
        {withPath ? breakable(pathText(leaf.path)) : leaf.label}
      </label>
      <div className="field-entry">
        <FieldEntry {...entry} />
        {leaf.canRemove && isTyping && (
          // Pressed before the entry loses focus, else it would be gone again.
          <Button
            className="field-remove"
            aria-label={`Remove ${leaf.label}`}
            preventFocusOnPress
            excludeFromTabOrder={false}
            onPress={() => document.remove(leaf.path)}
          >
            Remove
          </Button>
        )}
      </div>
      <p id={`${id}-about`} className="field-about">
        {errors && <strong className="field-error">{errors} </strong>}
        {about}
      </p>
    </div>
  );
}

/** A long path breaks after its dots. */
const breakable = (path: string): string => path.replaceAll('.', '.\u200b');

function errorsAt(issues: readonly { readonly path: string; readonly text: string }[], key: string): string {
  return issues
    .filter(({ path }) => path === key)
    .map(({ text }) => `${text}.`)
    .join(' ');
}

function unitHint({ entry, unit, value }: Leaf): string {
  if (entry !== 'quantity' || !unit || typeof value !== 'number') return '';
  return `In ${unit}.`;
}
