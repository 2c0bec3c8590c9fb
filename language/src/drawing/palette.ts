/** The inks of a sheet. One accent, for findings only, and never without a shape and a word beside it. */
export interface Palette {
    readonly paper: string;
    readonly ink: string;
    /** Second voice: captions, leaders, what is only for orientation. */
    readonly soft: string;
    /** Hairlines of water: crests, wedge. */
    readonly water: string;
    /** Front faces, and their lower third. */
    readonly face: string;
    readonly lower: string;
    readonly wash: string;
    readonly fan: string;
    readonly accent: string;
    /** What stands inside a shape filled with the accent. */
    readonly onAccent: string;
}

export type PaletteName = 'light' | 'dark' | 'high-contrast' | 'high-contrast-light';

export const palettes: Readonly<Record<PaletteName, Palette>> = {
    // Greys far enough apart to survive a photocopy; the accent is the magenta of sea charts.
    light: {
        paper: '#ffffff',
        ink: '#15191d',
        soft: '#515960',
        water: '#5d6d78',
        face: '#eef2f4',
        lower: '#d5dde2',
        wash: '#9aa5ad',
        fan: '#a9b2b9',
        accent: '#a8005c',
        onAccent: '#ffffff',
    },
    dark: {
        paper: '#11161b',
        ink: '#eef1f3',
        soft: '#a7b2ba',
        water: '#7f93a1',
        face: '#1a232a',
        lower: '#2a3741',
        wash: '#5a6873',
        fan: '#5f6d78',
        accent: '#ff86c8',
        onAccent: '#11161b',
    },
    'high-contrast': {
        paper: '#000000',
        ink: '#ffffff',
        soft: '#ffffff',
        water: '#ffffff',
        face: '#000000',
        lower: '#333333',
        wash: '#ffffff',
        fan: '#ffffff',
        accent: '#ffe600',
        onAccent: '#000000',
    },
    'high-contrast-light': {
        paper: '#ffffff',
        ink: '#000000',
        soft: '#000000',
        water: '#000000',
        face: '#ffffff',
        lower: '#d9d9d9',
        wash: '#000000',
        fan: '#000000',
        accent: '#8a004c',
        onAccent: '#ffffff',
    },
};
