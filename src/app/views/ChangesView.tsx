import { useState } from 'react';
import { Radio, RadioGroup } from 'react-aria-components';
import type { Difference, ScreenChange, ScreenFinding } from '../worker/messages.ts';
import { Amount } from './Amount.tsx';
import { useScreen } from './context.ts';
import { ScrollView } from './ScrollView.tsx';
import { SEVERITY_WORDS, SeverityMark } from './SeverityMark.tsx';

const NOTHING: Difference = { figures: [], found: [], cleared: [] };
type Since = 'sinceEdit' | 'sinceOpening';

/** What an edit did to the rest of the bike. */
export function ChangesView() {
  const [since, setSince] = useState<Since>('sinceEdit');
  const difference = useScreen(({ answer }) => answer?.[since] ?? NOTHING);
  const { figures, found, cleared } = difference;
  return (
    <ScrollView label="What changed">
      <RadioGroup
        aria-label="Compared with"
        orientation="horizontal"
        className="choice"
        value={since}
        onChange={(value) => setSince(value as Since)}
      >
        <Radio value="sinceEdit">Before the last edit</Radio>
        <Radio value="sinceOpening">The file as opened</Radio>
      </RadioGroup>
      <FindingList title="New findings" findings={found} />
      <FindingList title="Findings no longer there" findings={cleared} />
      {figures.length > 0 && (
        <>
          <h2>Figures that moved ({figures.length})</h2>
          <ul className="figures">
            {figures.map((change) => (
              <ChangeRow key={change.id} change={change} />
            ))}
          </ul>
        </>
      )}
      {figures.length + found.length + cleared.length === 0 && (
        <p className="hint">
          Nothing has moved. Change a number and everything that follows from it shows here.
        </p>
      )}
    </ScrollView>
  );
}

function ChangeRow({ change }: { readonly change: ScreenChange }) {
  const units = useScreen((state) => state.units);
  const { name, how, before, after, alreadyCut, part, state } = change;
  return (
    <li className={alreadyCut ? 'figure is-cut' : 'figure'} data-change={change.id}>
      <div className="figure-line">
        <span className="figure-name">{name}</span>
        <span className="figure-value">
          {how === 'new' && 'new: '}
          {how === 'gone' && 'gone: '}
          {before && (
            <span className="was">
              <Amount text={before[units]} />
            </span>
          )}
          {before && after && ' → '}
          {after && (
            <b>
              <Amount text={after[units]} />
            </b>
          )}
        </span>
      </div>
      {alreadyCut && (
        <p className="field-error">
          {part} is {state} to {alreadyCut[units]} and no longer fits.
        </p>
      )}
    </li>
  );
}

function FindingList({
  title,
  findings,
}: {
  readonly title: string;
  readonly findings: readonly ScreenFinding[];
}) {
  if (findings.length === 0) return null;
  return (
    <>
      <h2>
        {title} ({findings.length})
      </h2>
      <ul className="finding-lines">
        {findings.map(({ key, severity, what }) => (
          <li key={key}>
            <SeverityMark severity={severity} />
            <span>
              <b>{SEVERITY_WORDS[severity]}.</b> {what}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
