// A slider's handle takes the keyboard focus, but its name stands beside it; a picture has no
// alternative text of its own. Join what belongs together, so that a screen reader says it. What
// a slider would say of its value is full of digits (88.60000000000002); it says what it shows.

/** Name the sliders and pictures under `root`, now and as they come; returns the observer. */
export function nameWidgets(root) {
  const name = () => {
    root.querySelectorAll('.noUi-handle:not([aria-label])').forEach(nameHandle);
    root.querySelectorAll('.noUi-handle').forEach(sayValue);
    root.querySelectorAll('img.widget-image:not([alt])').forEach(namePicture);
  };
  name();
  const observer = new MutationObserver(name);
  observer.observe(root, { childList: true, subtree: true, attributeFilter: ['aria-valuetext'] });
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

function sayValue(handle) {
  const shown = handle.closest('.jupyter-widgets')?.querySelector('.widget-readout')?.textContent;
  if (shown && handle.getAttribute('aria-valuetext') !== shown) {
    handle.setAttribute('aria-valuetext', shown);
  }
}

// The words stand in the box that holds the picture: in an element of this class, or its heading.
function namePicture(picture) {
  const box = picture.parentElement;
  const words =
    box?.querySelector('.ropecalc-alternative') ?? box?.querySelector('h1, h2, h3, h4, h5, h6');
  if (words) {
    picture.alt = words.textContent.trim();
  }
}
