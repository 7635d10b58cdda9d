import { useMemo, useState } from 'react';
import { Radio, RadioGroup } from 'react-aria-components';
import type { Sight } from '../worker/messages.ts';
import { useScreen } from './context.ts';
import { DrawingPane } from './DrawingPane.tsx';
import { RiderSwitch } from './RiderSwitch.tsx';
import { usePartJump } from './SheetBrowser.tsx';
import { useDrawn } from './useDrawn.ts';
import { useMarked } from './useMarked.ts';

const SIGHTS: Readonly<Record<Sight, string>> = { left: 'Left', right: 'Right', top: 'Top' };

/** The placed bike as a drawing; a tap on a part opens its field. */
export function SideView() {
  const withRider = useScreen((state) => state.withRider);
  const name = useScreen(({ answer }) => answer?.name ?? 'the build');
  const [sight, setSight] = useState<Sight>('left');
  const svg = useDrawn(`${sight} ${withRider}`, (solver, revision) =>
    solver.picture(revision, sight, withRider),
  );
  const parts = useMemo(() => partsIn(svg), [svg]);
  const marked = useMarked(parts);
  const onPart = usePartJump();
  return (
    <div className="view">
      <div className="view-tools">
        <RadioGroup
          aria-label="Seen from"
          orientation="horizontal"
          className="choice"
          value={sight}
          onChange={(value) => setSight(value as Sight)}
        >
          {Object.entries(SIGHTS).map(([value, label]) => (
            <Radio key={value} value={value}>
              {label}
            </Radio>
          ))}
        </RadioGroup>
        <RiderSwitch />
        <p className="hint">Tap a part to open its numbers.</p>
      </div>
      <DrawingPane
        svg={svg}
        subject={sight}
        label={`${name}, seen from ${sight === 'top' ? 'above' : `the ${sight}`}`}
        marked={marked}
        onPart={onPart}
      />
    </div>
  );
}

function partsIn(svg: string | undefined): readonly string[] {
  const names = svg?.matchAll(/data-part="([^"]*)"/g) ?? [];
  return [...new Set([...names].map(([, name]) => name ?? ''))];
}
