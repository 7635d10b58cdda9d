import { type ScreenStore, VIEWS, type ViewName } from './screen.ts';

export const viewOfHash = (hash: string): ViewName | undefined => VIEWS.find((view) => hash === `#/${view}`);

/** Keeps the address and the view the same, so that back and forward go through the views. */
export function followRoute(screen: ScreenStore, window: Window): void {
  const read = (): void => {
    const view = viewOfHash(window.location.hash);
    if (view) screen.setState({ view });
  };
  window.addEventListener('hashchange', read);
  screen.subscribe(({ view }, before) => {
    if (view !== before.view && viewOfHash(window.location.hash) !== view) window.location.hash = `/${view}`;
  });
  read();
}
