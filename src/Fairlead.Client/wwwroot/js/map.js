// How wide something is drawn, and holding the pointer while something is dragged: what only the browser can tell.
export const width = element => element.getBoundingClientRect().width;
export const hold = (element, pointer) => { try { element.setPointerCapture(pointer); } catch { /* the pointer has gone already */ } };
