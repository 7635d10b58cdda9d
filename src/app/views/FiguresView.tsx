import { useMemo, useState } from 'react';
import { Button, Input, Label, SearchField } from 'react-aria-components';
import type { ScreenFigure } from '../worker/messages.ts';
import { Amount } from './Amount.tsx';
import { useScreen } from './context.ts';
import { ScrollView } from './ScrollView.tsx';
import { SourceLine } from './SourceLine.tsx';

/** Every number that was worked out; each can show how. */
export function FiguresView() {
  const figures = useScreen(({ answer }) => answer?.figures ?? []);
  const [search, setSearch] = useState('');
  const shown = useMemo(() => figures.filter((figure) => matches(figure, search)), [figures, search]);
  return (
    <ScrollView label="Figures">
      <SearchField className="search" value={search} onChange={setSearch}>
        <Label>Find a figure</Label>
        <Input placeholder="trail, wrap, spacer, drive final …" />
      </SearchField>
      <p className="hint" role="status">
        {shown.length} of {figures.length} figures
      </p>
      <ul className="figures">
        {shown.map((figure) => (
          <FigureRow key={figure.id} figure={figure} />
        ))}
      </ul>
    </ScrollView>
  );
}

function FigureRow({ figure }: { readonly figure: ScreenFigure }) {
  const units = useScreen((state) => state.units);
  const [isOpen, setOpen] = useState(false);
  const { id, name, symbol, value, formula, inputs, source } = figure;
  return (
    <li className="figure" data-figure={id}>
      <div className="figure-line">
        <span className="figure-name">{name}</span>
        <output className="figure-value">
          <Amount text={value[units]} />
        </output>
        <Button
          aria-expanded={isOpen}
          aria-label={`Show working of ${name}`}
          onPress={() => setOpen(!isOpen)}
        >
          {isOpen ? 'Hide' : 'Working'}
        </Button>
      </div>
      {isOpen && (
        <div className="working">
          <p className="formula">
            {symbol} = {formula}
          </p>
          <dl>
            {inputs.map((input) => (
              <div key={input.name}>
                <dt>{input.name}</dt>
                <dd>
                  <Amount text={input.value[units]} />
                </dd>
              </div>
            ))}
          </dl>
          <SourceLine source={source} />
          <p className="source">Figure {id}</p>
        </div>
      )}
    </li>
  );
}

function matches({ id, name, symbol }: ScreenFigure, search: string): boolean {
  const text = `${id} ${name} ${symbol}`.toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
