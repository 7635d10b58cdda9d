import type { ReactNode } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { VIEWS, type ViewName } from '../store/screen.ts';
import { Caution } from './Caution.tsx';
import { ChangesView } from './ChangesView.tsx';
import { useScreen, useWorkshop } from './context.ts';
import { FiguresView } from './FiguresView.tsx';
import { FindingsView } from './FindingsView.tsx';
import { Header } from './Header.tsx';
import { LadderView } from './LadderView.tsx';
import { Numbers } from './Numbers.tsx';
import { SheetBrowser } from './SheetBrowser.tsx';
import { SideView } from './SideView.tsx';
import { SolidView } from './SolidView.tsx';
import { useNarrow } from './useNarrow.ts';
import { VerdictBar } from './VerdictBar.tsx';

const TITLES: Readonly<Record<ViewName, string>> = {
  numbers: 'Numbers',
  side: 'Side view',
  solid: '3D',
  ladder: 'Lateral ladder',
  sheets: 'Sheets',
  figures: 'Figures',
  findings: 'Findings',
  changes: 'What changed',
};

/** On a phone all tabs fit in two rows of four, each one tap away. */
const SHORT_TITLES: Readonly<Partial<Record<ViewName, string>>> = {
  side: 'Side',
  ladder: 'Ladder',
  changes: 'Changed',
};

const PANELS: Readonly<Record<ViewName, () => ReactNode>> = {
  numbers: () => <Numbers />,
  side: () => <SideView />,
  solid: () => <SolidView />,
  ladder: () => <LadderView />,
  sheets: () => <SheetBrowser />,
  figures: () => <FiguresView />,
  findings: () => <FindingsView />,
  changes: () => <ChangesView />,
};

export function App() {
  const { screen } = useWorkshop();
  const isNarrow = useNarrow();
  const chosen = useScreen((state) => state.view);
  const hasErrors = useScreen((state) => state.issues.length > 0);
  const answer = useScreen((state) => state.answer);
  const views = VIEWS.filter((view) => isNarrow || view !== 'numbers');
  const view = views.includes(chosen) ? chosen : 'side';
  const isOld = hasErrors && answer !== undefined && view !== 'numbers';
  return (
    <div className="app">
      <Header />
      <VerdictBar />
      <main className="bench">
        {!isNarrow && <Numbers />}
        <Tabs
          className={isOld ? 'tabs is-old' : 'tabs'}
          selectedKey={view}
          onSelectionChange={(key) => screen.setState({ view: key as ViewName })}
        >
          <TabList className="tab-list" aria-label="Views">
            {views.map((name) => (
              <Tab key={name} id={name} className="tab">
                {isNarrow ? (SHORT_TITLES[name] ?? TITLES[name]) : TITLES[name]}
              </Tab>
            ))}
          </TabList>
          {isOld && <p className="old-note">This is the last good result: the file has errors.</p>}
          <Caution />
          {views.map((name) => (
            <TabPanel key={name} id={name} className="tab-panel">
              {answer || name === 'numbers' ? PANELS[name]() : <NothingYet />}
            </TabPanel>
          ))}
        </Tabs>
      </main>
    </div>
  );
}

function NothingYet() {
  const hasErrors = useScreen((state) => state.issues.length > 0);
  return (
    <p className="hint nothing-yet">
      {hasErrors ? 'Nothing can be drawn until the errors in the file are mended.' : 'Solving …'}
    </p>
  );
}
