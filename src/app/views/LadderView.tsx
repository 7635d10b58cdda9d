import { type ReactNode, useState } from 'react';
import { Radio, RadioGroup } from 'react-aria-components';
import type { ChainLineRow, TireGapRow } from '../worker/messages.ts';
import { Amount } from './Amount.tsx';
import { useScreen } from './context.ts';
import { ScrollView } from './ScrollView.tsx';
import { SheetBrowser } from './SheetBrowser.tsx';
import { useNarrow } from './useNarrow.ts';

type Mode = 'drawing' | 'steps';

const MODES: Readonly<Record<Mode, string>> = { drawing: 'Drawing', steps: 'Steps' };

/** Every chain line reached from both sides, drawn and in steps; on a phone the steps read better. */
export function LadderView() {
  const isNarrow = useNarrow();
  const [chosen, setMode] = useState<Mode>();
  const mode = chosen ?? (isNarrow ? 'steps' : 'drawing');
  const choice = (
    <RadioGroup
      aria-label="Ladder as"
      orientation="horizontal"
      className="choice"
      value={mode}
      onChange={(value) => setMode(value as Mode)}
    >
      {Object.entries(MODES).map(([value, label]) => (
        <Radio key={value} value={value}>
          {label}
        </Radio>
      ))}
    </RadioGroup>
  );
  return mode === 'drawing' ? (
    <SheetBrowser only="lateral-ladder" tools={choice} />
  ) : (
    <LadderSteps choice={choice} />
  );
}

function LadderSteps({ choice }: { readonly choice: ReactNode }) {
  const lines = useScreen(({ answer }) => answer?.lines ?? []);
  const gaps = useScreen(({ answer }) => answer?.gaps ?? []);
  return (
    <ScrollView label="Lateral ladder">
      {choice}
      <p className="hint">Distances are from the center plane of the bike, left positive.</p>
      {lines.map((line) => (
        <LineCard key={line.drive} line={line} />
      ))}
      {gaps.length > 0 && <GapTable gaps={gaps} />}
      {lines.length + gaps.length === 0 && <p className="hint">No drive is laid out yet.</p>}
    </ScrollView>
  );
}

function LineCard({ line }: { readonly line: ChainLineRow }) {
  const units = useScreen((state) => state.units);
  return (
    <section className="ladder-line">
      <h2>
        Drive {line.drive}: <Verdict within={line.within} />
      </h2>
      <dl className="measures">
        <div>
          <dt>Offset</dt>
          <dd>
            <Amount text={line.offset[units]} />
          </dd>
        </div>
        <div>
          <dt>Limit</dt>
          <dd>
            <Amount text={line.limit[units]} />
          </dd>
        </div>
        <div>
          <dt>Angle</dt>
          <dd>
            <Amount text={line.angle[units]} />
          </dd>
        </div>
        <div>
          <dt>Driving plane</dt>
          <dd>
            <Amount text={line.driver[units]} />
          </dd>
        </div>
        <div>
          <dt>Driven plane</dt>
          <dd>
            <Amount text={line.driven[units]} />
          </dd>
        </div>
      </dl>
      <div className="ladder-sides">
        {line.sides.map(({ from, steps }) => (
          <table key={from}>
            <caption>Steps {from}</caption>
            <thead>
              <tr>
                <th scope="col">Step</th>
                <th scope="col">Length</th>
                <th scope="col">Reaches</th>
              </tr>
            </thead>
            <tbody>
              {steps.map((step, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: steps have no name of their own and keep their order
                <tr key={i} className={step.make ? 'to-make' : undefined}>
                  <th scope="row">
                    {step.label}
                    {step.make && <b> — make</b>}
                  </th>
                  <td>
                    <Amount text={step.length[units]} />
                  </td>
                  <td>
                    <Amount text={step.to[units]} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        ))}
      </div>
      {line.options.length > 0 && (
        <>
          <h3>Ways to bring it in line</h3>
          <ul className="options">
            {line.options.map((option) => (
              <li key={`${option.text}${option.length.mm}`}>
                <b>
                  <Amount text={option.length[units]} />
                </b>{' '}
                for {option.text}
                {option.hindrance ? <em> — in the way: {option.hindrance}</em> : ' — nothing in the way'}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function GapTable({ gaps }: { readonly gaps: readonly TireGapRow[] }) {
  const units = useScreen((state) => state.units);
  return (
    <section className="ladder-line">
      <h2>Room beside the tires, with growth</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Against</th>
            <th scope="col">Room</th>
            <th scope="col">Limit</th>
            <th scope="col">Verdict</th>
          </tr>
        </thead>
        <tbody>
          {gaps.map(({ against, gap, limit, within }) => (
            <tr key={against}>
              <th scope="row">{against}</th>
              <td>
                <Amount text={gap[units]} />
              </td>
              <td>
                <Amount text={limit[units]} />
              </td>
              <td>
                <Verdict within={within} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const Verdict = ({ within }: { readonly within: boolean }) => (
  <span className={within ? 'within' : 'outside'}>
    {within ? '✓ within the limit' : '✕ outside the limit'}
  </span>
);
