// Where the focus goes when what had it is gone: nobody who works by keyboard or listens to the page is to look for the place again.
const takes = 'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), [tabindex="0"]';
const lost = () => !document.activeElement || document.activeElement === document.body;
const follows = (root, element) => !root.contains(element) && root.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING;

// To the first key that is left of a part of the page, or else to what follows it.
export const onward = root => {
    if (root && lost()) (root.querySelector('button:not(:disabled)') ?? [...document.querySelectorAll('main :is(' + takes + ')')].find(e => follows(root, e)))?.focus();
};

export const to = id => {
    const element = document.getElementById(id);
    element?.focus({ preventScroll: true });
    element?.scrollIntoView({ block: 'center' });
};

// Into something that opens, and back to where it was opened from.
let opener = null;
export const enter = element => {
    if (!element.contains(document.activeElement)) opener = document.activeElement;
    element.focus();
};
export const back = () => {
    if (lost()) (opener?.isConnected ? opener : document.querySelector('h1'))?.focus();
    opener = null;
};
