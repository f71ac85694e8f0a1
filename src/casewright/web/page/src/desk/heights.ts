/** Heights of what stays in sight above a page, so that what is led to is not hidden under it. */

/** Keep the height of an element known to the styles; returns what ends it. */
export function keepHeight(element: HTMLElement, name: string): () => void {
  const root = document.documentElement;
  const watch = new ResizeObserver(() => {
    const stays = getComputedStyle(element).position === "sticky";
    root.style.setProperty(name, `${stays ? element.offsetHeight : 0}px`);
  });
  watch.observe(element);
  return () => {
    watch.disconnect();
    root.style.removeProperty(name);
  };
}
