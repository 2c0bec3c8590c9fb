/** What a panel can show of a plan, in the order of its switch. */
export const views = ['above', 'side', 'turn', 'strike', 'compare'] as const;

export type View = (typeof views)[number];

/** As the switch calls them, and as a picture of them is named. */
export const viewNames: Readonly<Record<View, string>> = {
    above: 'From above',
    side: 'From the side',
    turn: 'Turn',
    strike: 'Strike',
    compare: 'Compare',
};

export function isView(value: unknown): value is View {
    return views.includes(value as View);
}
