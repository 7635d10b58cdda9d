import { useState } from 'react';
import type { Leaf } from '../store/fields.ts';
import type { Json } from '../store/json.ts';

export interface Entry {
  readonly id: string;
  readonly leaf: Leaf;
  readonly describedBy: string;
  readonly isInvalid: boolean;
  readonly onFocus: () => void;
  readonly onBlur: () => void;
  readonly onValue: (value: Json) => void;
}

/** The control that a kind of value wants. */
export function FieldEntry(entry: Entry) {
  const { leaf } = entry;
  if (leaf.entry === 'switch') return <SwitchEntry {...entry} />;
  if (leaf.entry === 'choice' && leaf.choices?.includes(String(leaf.value)))
    return <ChoiceEntry {...entry} />;
  if (leaf.entry === 'fixed')
    return (
      <output id={entry.id} className="field-fixed">
        {String(leaf.value)}
      </output>
    );
  return <TextEntry {...entry} />;
}

/** What is typed stays as typed while the field is visited, even where it reads as another spelling of the value. */
function TextEntry({ id, leaf, describedBy, isInvalid, onFocus, onBlur, onValue }: Entry) {
  const [draft, setDraft] = useState<{ readonly text: string; readonly value: Json }>();
  const isLive = draft !== undefined && draft.value === leaf.value;
  return (
    <input
      id={id}
      className={leaf.entry === 'quantity' ? 'is-number' : undefined}
      type="text"
      autoComplete="off"
      autoCapitalize="off"
      spellCheck={false}
      value={isLive ? draft.text : String(leaf.value)}
      placeholder={leaf.example}
      aria-describedby={describedBy}
      aria-invalid={isInvalid || undefined}
      onFocus={onFocus}
      onBlur={() => {
        setDraft(undefined);
        onBlur();
      }}
      onChange={(event) => {
        const text = event.target.value;
        const value = typedValue(text, leaf);
        setDraft({ text, value });
        onValue(value);
      }}
    />
  );
}

function ChoiceEntry({ id, leaf, describedBy, isInvalid, onFocus, onBlur, onValue }: Entry) {
  return (
    <select
      id={id}
      value={String(leaf.value)}
      aria-describedby={describedBy}
      aria-invalid={isInvalid || undefined}
      onFocus={onFocus}
      onBlur={onBlur}
      onChange={(event) => onValue(event.target.value)}
    >
      {leaf.choices?.map((choice) => (
        <option key={choice} value={choice}>
          {choice}
        </option>
      ))}
    </select>
  );
}

function SwitchEntry({ id, leaf, describedBy, onFocus, onBlur, onValue }: Entry) {
  return (
    <span className="field-switch">
      <input
        id={id}
        type="checkbox"
        checked={leaf.value === true}
        aria-describedby={describedBy}
        onFocus={onFocus}
        onBlur={onBlur}
        onChange={(event) => onValue(event.target.checked)}
      />
      <span aria-hidden="true">{leaf.value === true ? 'yes' : 'no'}</span>
    </span>
  );
}

const PLAIN_NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/;

/** A plain number is kept as a number, so that a file keeps the form it had; all else as the text it is. */
function typedValue(text: string, leaf: Leaf): Json {
  const isNumeric = leaf.entry === 'quantity' || typeof leaf.value === 'number';
  const plain = text.trim();
  return isNumeric && PLAIN_NUMBER.test(plain) && Number.isFinite(Number(plain)) ? Number(plain) : text;
}
