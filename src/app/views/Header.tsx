import { useRef } from 'react';
import { Button, Radio, RadioGroup } from 'react-aria-components';
import { useStore } from 'zustand';
import { demos } from '../storage/demos.ts';
import type { UnitSystem } from '../worker/messages.ts';
import { useDocument, useScreen, useWorkshop } from './context.ts';
import { openDemo, openFile, saveFile } from './files.ts';

const UNITS: Readonly<Record<UnitSystem, string>> = { in: 'in', mm: 'mm', both: 'both' };

/** Which build is open, and what can be done with the whole of it. */
export function Header() {
  const workshop = useWorkshop();
  const picker = useRef<HTMLInputElement>(null);
  const buildName = useDocument(({ file }) => nameOf(file.about) ?? 'Unnamed build');
  return (
    <header className="header">
      <p className="brand">Jigwright</p>
      <h1>{buildName}</h1>
      <div className="header-tools">
        <DemoPicker />
        <Button onPress={() => picker.current?.click()}>Open</Button>
        <input
          ref={picker}
          className="file-input"
          type="file"
          accept=".json,application/json"
          aria-label="Build file to open"
          tabIndex={-1}
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            if (file) void openFile(workshop, file);
            event.target.value = '';
          }}
        />
        <Button onPress={() => saveFile(workshop)}>Save</Button>
        <UndoButtons />
        <UnitChoice />
      </div>
    </header>
  );
}

function DemoPicker() {
  const workshop = useWorkshop();
  const name = useDocument((state) => state.name);
  return (
    // Always shows the open file, so that a demo can be opened afresh after it was edited.
    <select
      className="demo-picker"
      aria-label="Build"
      value=""
      onChange={(event) => {
        const demo = demos.find((one) => one.name === event.target.value);
        if (demo) void openDemo(workshop, demo);
      }}
    >
      <option value="">{name}</option>
      <optgroup label="Open a demo">
        {demos.map((demo) => (
          <option key={demo.name} value={demo.name}>
            {demo.label}
          </option>
        ))}
      </optgroup>
    </select>
  );
}

function UndoButtons() {
  const { document } = useWorkshop();
  const canUndo = useStore(document.store.temporal, ({ pastStates }) => pastStates.length > 0);
  const canRedo = useStore(document.store.temporal, ({ futureStates }) => futureStates.length > 0);
  return (
    <>
      <Button isDisabled={!canUndo} onPress={document.undo}>
        Undo
      </Button>
      <Button isDisabled={!canRedo} onPress={document.redo}>
        Redo
      </Button>
    </>
  );
}

function UnitChoice() {
  const { screen } = useWorkshop();
  const units = useScreen((state) => state.units);
  return (
    <RadioGroup
      aria-label="Units shown"
      orientation="horizontal"
      className="choice"
      value={units}
      onChange={(value) => screen.setState({ units: value as UnitSystem })}
    >
      {Object.entries(UNITS).map(([value, label]) => (
        <Radio key={value} value={value}>
          {label}
        </Radio>
      ))}
    </RadioGroup>
  );
}

function nameOf(about: unknown): string | undefined {
  const name = (about as { readonly name?: unknown } | undefined)?.name;
  return typeof name === 'string' && name.trim() !== '' ? name : undefined;
}
