/** Where a panel stands: beside what it is about, inside the window. */

const APART = 10;

/** Put a panel under what was touched, or over it where there is more room; never over it. */
export function placed(panel: HTMLElement, at: Element): void {
  if (!at.isConnected) return; // gone with an edit: the panel stays where it is
  const about = at.querySelector(".field")?.getBoundingClientRect() ?? at.getBoundingClientRect();
  const { innerWidth: wide, innerHeight: tall } = window;
  panel.style.maxHeight = "";
  const own = panel.getBoundingClientRect();
  const below = tall - about.bottom - 2 * APART;
  const above = about.top - 2 * APART;
  const under = below >= own.height || below >= above;
  panel.style.maxHeight = `${Math.max(under ? below : above, 160)}px`;
  const height = Math.min(own.height, under ? below : above);
  panel.style.top = `${under ? about.bottom + APART : Math.max(about.top - APART - height, APART)}px`;
  const left = Math.min(Math.max(about.left + about.width / 2 - own.width / 2, APART), wide - own.width - APART);
  panel.style.left = `${Math.max(left, APART)}px`;
}
