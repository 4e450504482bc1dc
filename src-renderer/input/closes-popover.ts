/** Whether a key closes what lies open over the window, a photograph for one: the browser does that by itself unless it is kept from it. */
export const closesPopover = ({ key }: Pick<KeyboardEvent, 'key'>): boolean => key === 'Escape' && document.querySelector(':popover-open') !== null;
