// Brings the open page's link into sight, where the links stand in one line.
export const show = () => document.querySelector('nav[aria-label="Pages of the job"] a.active')?.scrollIntoView({ block: 'nearest', inline: 'center' });
