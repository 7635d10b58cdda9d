import type { ChainLineRow, TireGapRow } from '../worker/messages.ts';
import { useScreen } from './context.ts';

/** Every chain line reached from both sides, and the room beside the tire. */
export function LadderView() {
  const lines = useScreen(({ answer }) => answer?.lines ?? []);
  const gaps = useScreen(({ answer }) => answer?.gaps ?? []);
  return (
    <div className="view scrolls">
      <p className="hint">Distances are from the center plane of the bike, left positive.</p>
      {lines.map((line) => (
        <LineCard key={line.drive} line={line} />
      ))}
      {gaps.length > 0 && <GapTable gaps={gaps} />}
      {lines.length + gaps.length === 0 && <p className="hint">No drive is laid out yet.</p>}
    </div>
  );
}

function LineCard({ line }: { readonly line: ChainLineRow }) {
  const units = useScreen((state) => state.units);
  return (
    <section className="ladder-line">
      <h3>
        Drive {line.drive}: <Verdict within={line.within} />
      </h3>
      <dl className="measures">
        <div>
          <dt>Offset</dt>
          <dd>{line.offset[units]}</dd>
        </div>
        <div>
          <dt>Limit</dt>
          <dd>{line.limit[units]}</dd>
        </div>
        <div>
          <dt>Angle</dt>
          <dd>{line.angle[units]}</dd>
        </div>
        <div>
          <dt>Driving plane</dt>
          <dd>{line.driver[units]}</dd>
        </div>
        <div>
          <dt>Driven plane</dt>
          <dd>{line.driven[units]}</dd>
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
                  <td>{step.length[units]}</td>
                  <td>{step.to[units]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        ))}
      </div>
      {line.options.length > 0 && (
        <>
          <h4>Ways to bring it in line</h4>
          <ul className="options">
            {line.options.map((option) => (
              <li key={`${option.text}${option.length.mm}`}>
                <b>{option.length[units]}</b> for {option.text}
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
      <h3>Room beside the tires, with growth</h3>
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
              <td>{gap[units]}</td>
              <td>{limit[units]}</td>
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
