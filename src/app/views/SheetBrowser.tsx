import { type ReactNode, useCallback, useState } from 'react';
import { Button } from 'react-aria-components';
import { download } from '../storage/browser.ts';
import type { SheetName, SheetPrint } from '../worker/messages.ts';
import { useScreen, useWorkshop } from './context.ts';
import { DrawingPane } from './DrawingPane.tsx';
import { jumpToField, pathOfPart } from './jump.ts';
import { useDrawn } from './useDrawn.ts';

interface SheetBrowserProps {
  /** Only sheets whose id begins so. */
  readonly only?: string;
  readonly tools?: ReactNode;
}

/** Sheets of the shop pack one at a time, as they print. */
export function SheetBrowser({ only = '', tools }: SheetBrowserProps) {
  const printed = usePrinted();
  const names = useDrawn(`sheets ${printed.units}`, (solver, revision) => solver.sheets(revision, printed));
  const [chosen, setChosen] = useState<string>();
  const shown = names?.filter(({ id }) => id.startsWith(only)) ?? [];
  const at = Math.max(
    shown.findIndex(({ id }) => id === chosen),
    0,
  );
  const current = shown[at];
  const svg = useDrawn(`${current?.id} ${printed.units}`, async (solver, revision) =>
    current ? solver.sheet(revision, printed, current.id) : undefined,
  );
  const onPart = usePartJump();
  const go = (by: number): void => setChosen(shown[at + by]?.id);
  return (
    <div className="view">
      <div className="view-tools">
        {tools}
        {current && (
          <>
            <div className="sheet-picker">
              <Button aria-label="Sheet before" isDisabled={at === 0} onPress={() => go(-1)}>
                ‹
              </Button>
              <SheetSelect names={shown} current={current} onChoose={setChosen} />
              <Button aria-label="Next sheet" isDisabled={at === shown.length - 1} onPress={() => go(1)}>
                ›
              </Button>
            </div>
            <Button
              isDisabled={!svg}
              onPress={() => svg && download(`${current.id}.svg`, svg, 'image/svg+xml')}
            >
              Save SVG
            </Button>
            <span className="hint is-kept">
              {at + 1} of {shown.length}
              {current.scale && ` · scale ${current.scale}`}
            </span>
          </>
        )}
      </div>
      {!names && <p className="hint nothing-yet">Drawing the sheets …</p>}
      {names && !current && <p className="hint nothing-yet">This build has no such sheet.</p>}
      {current && (
        <DrawingPane
          svg={svg}
          subject={current.id}
          isPaper
          label={`Sheet ${current.title}`}
          onPart={onPart}
        />
      )}
    </div>
  );
}

interface SheetSelectProps {
  readonly names: readonly SheetName[];
  readonly current: SheetName;
  readonly onChoose: (id: string) => void;
}

function SheetSelect({ names, current, onChoose }: SheetSelectProps) {
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

/** Opens the field of a part that was tapped. */
export function usePartJump(): (part: string) => void {
  const workshop = useWorkshop();
  return useCallback(
    (part) => {
      const path = pathOfPart(workshop, part);
      if (path !== undefined) jumpToField(workshop, path);
    },
    [workshop],
  );
}
