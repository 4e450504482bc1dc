/** Channel on which the window calls a method of the contract. */
export const CALL_CHANNEL = 'host-call';
/** Channel on which the menu tells the window which action was chosen. */
export const ACTION_CHANNEL = 'menu-action';
