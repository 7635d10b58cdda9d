import { useEffect, useState } from 'react';
import type { BikeView } from '../three/bikeView.ts';

/** The class that draws in 3D, loaded when this is first used; `trouble` says why there is none. */
export function useBikeView(canvas: { readonly current: HTMLCanvasElement | null }) {
  const [view, setView] = useState<BikeView>();
  const [trouble, setTrouble] = useState<string>();
  useEffect(() => {
    let made: BikeView | undefined;
    let isGone = false;
    const start = async (): Promise<void> => {
      const { BikeView } = await import('../three/bikeView.ts');
      if (isGone || !canvas.current) return;
      made = new BikeView(canvas.current);
      setView(made);
    };
    start().catch((error: Error) =>
      setTrouble(`This browser can not draw the 3D view (${error.message}). The other views say the same.`),
    );
    return () => {
      isGone = true;
      made?.dispose();
    };
  }, [canvas]);
  return { view, trouble };
}
