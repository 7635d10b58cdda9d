import { useSyncExternalStore } from 'react';

/** Below this the numbers have a tab of their own and the tabs stand at the bottom. */
export const NARROW = '(max-width: 899px)';

/** True on a phone or a small tablet held upright. */
export const useNarrow = (): boolean =>
  useSyncExternalStore(
    (tell) => {
      const media = window.matchMedia(NARROW);
      media.addEventListener('change', tell);
      return () => media.removeEventListener('change', tell);
    },
    () => window.matchMedia(NARROW).matches,
  );
