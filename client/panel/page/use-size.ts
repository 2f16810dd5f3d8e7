/** The size that an element of the page has, as it changes; and a camera that glides from one view to the next. */
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { between, type Camera } from "./camera.js";

export function useWidth(usual: number): readonly [{ current: HTMLDivElement | null }, number] {
  const ref = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(usual);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined) setWidth(Math.max(220, Math.round(entry.contentRect.width)));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}

export const prefersStillness = (): boolean => matchMedia("(prefers-reduced-motion: reduce)").matches;

const GLIDE_MS = 280;

/** @param glides whether a change is one from view to view, not the pointer's turning */
export function useCamera(target: Camera, glides: boolean): Camera {
  const [camera, setCamera] = useState(target);
  const shown = useRef(target);
  const { azimuth, elevation } = target;
  useEffect(() => {
    const to = { azimuth, elevation };
    const put = (next: Camera): void => {
      shown.current = next;
      setCamera(next);
    };
    if (!glides || prefersStillness()) {
      put(to);
      return undefined;
    }
    const from = shown.current;
    const start = performance.now();
    let frame = requestAnimationFrame(function step(now: number) {
      const share = Math.min(1, Math.max(0, now - start) / GLIDE_MS);
      put(share === 1 ? to : between(from, to, share * share * (3 - 2 * share)));
      if (share < 1) frame = requestAnimationFrame(step);
    });
    return () => cancelAnimationFrame(frame);
  }, [azimuth, elevation, glides]);
  return glides ? camera : target;
}
