import { useState } from 'react';
import { Button } from 'react-aria-components';
import { download } from '../storage/browser.ts';
import type { SheetName, SheetPrint } from '../worker/messages.ts';
import { useScreen } from './context.ts';
import { DrawingPane } from './DrawingPane.tsx';
import { useDrawn } from './useDrawn.ts';

/** The sheets of the shop pack, as they print. */
export function SheetsView() {
  const printed = usePrinted();
  const names = useDrawn(`sheets ${printed.units}`, (solver, revision) => solver.sheets(revision, printed));
  const [chosen, setChosen] = useState<string>();
  const at = Math.max(names?.findIndex(({ id }) => id === chosen) ?? 0, 0);
  const current = names?.[at];
  if (!names) return <p className="hint">Drawing the sheets …</p>;
  if (!current) return <p className="hint">This build has no sheets yet.</p>;
  const go = (by: number): void => setChosen(names[at + by]?.id);
  return (
    <div className="view">
      <div className="view-tools">
        <Button aria-label="Sheet before" isDisabled={at === 0} onPress={() => go(-1)}>
          ‹
        </Button>
        <SheetPicker names={names} current={current} onChoose={setChosen} />
        <Button aria-label="Next sheet" isDisabled={at === names.length - 1} onPress={() => go(1)}>
          ›
        </Button>
        <span className="hint">
          {at + 1} of {names.length}
          {current.scale && ` · scale ${current.scale}`}
        </span>
      </div>
      <OneSheet key={current.id} sheet={current} />
    </div>
  );
}

interface SheetPickerProps {
  readonly names: readonly SheetName[];
  readonly current: SheetName;
  readonly onChoose: (id: string) => void;
}

function SheetPicker({ names, current, onChoose }: SheetPickerProps) {
  const groups = [...new Set(names.map(({ group }) => group))];
  return (
    <select aria-label="Sheet" value={current.id} onChange={(event) => onChoose(event.target.value)}>
      {groups.map((group) => (
        <optgroup key={group} label={group}>
          {names
            .filter((name) => name.group === group)
            .map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
        </optgroup>
      ))}
    </select>
  );
}

/** Sheets carry the day they are printed on. */
function usePrinted(): SheetPrint {
  const units = useScreen((state) => state.units);
  return { units, date: new Date().toLocaleDateString('sv-SE') };
}

function OneSheet({ sheet }: { readonly sheet: SheetName }) {
  const printed = usePrinted();
  const svg = useDrawn(`${sheet.id} ${printed.units}`, (solver, revision) =>
    solver.sheet(revision, printed, sheet.id),
  );
  return (
    <>
      <DrawingPane svg={svg} subject={sheet.id} label={`Sheet ${sheet.title}`} />
      <div className="view-tools">
        <Button isDisabled={!svg} onPress={() => svg && download(`${sheet.id}.svg`, svg, 'image/svg+xml')}>
          Save this sheet as SVG
        </Button>
      </div>
    </>
  );
}
