// A slider's handle takes the keyboard focus, but its name stands beside it: join the two, so
// that a screen reader says which slider it is on.

/** Name the sliders under `root`, now and as they come; returns the observer, to disconnect. */
export function labelSliders(root) {
  const name = () => root.querySelectorAll('.noUi-handle:not([aria-label])').forEach(nameHandle);
  name();
  const observer = new MutationObserver(name);
  observer.observe(root, { childList: true, subtree: true });
  return observer;
}

function nameHandle(handle) {
  const slider = handle.closest('.jupyter-widgets');
  const label = slider?.querySelector('.widget-label')?.textContent.trim();
  const text = label || slider?.title;
  if (text) {
    handle.setAttribute('aria-label', text);
  }
}
