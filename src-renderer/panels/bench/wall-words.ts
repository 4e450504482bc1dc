/** What a wall is made of, in the user's words. */
export const CONSTRUCTION = { unknown: 'Not yet known', block: 'Block', concrete: 'Concrete', 'stud-gypsum': 'Stud and gypsum', panel: 'Panel', glass: 'Glass', other: 'Other' } as const;
