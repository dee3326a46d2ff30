// Whether four columns have room: by the size of words as they are, not as the browser would have
// them, so that large words get the layout of a phone.

/** In widths of the page's letters. */
const kColumns = 52;

/** Keeps the class "narrow" on the page's root as it is just now. */
export function followWidth(): void {
  const root = document.documentElement;
  const look = () => {
    const letters = parseFloat(getComputedStyle(root).fontSize);
    root.classList.toggle('narrow', root.clientWidth < kColumns * letters);
  };
  // As wide as a letter: it changes where either the letters or the page do.
  const probe = document.createElement('div');
  probe.className = 'probe';
  document.body.append(probe);
  const observer = new ResizeObserver(look);
  observer.observe(probe);
  observer.observe(root);
  window.addEventListener('resize', look);
  look();
}
