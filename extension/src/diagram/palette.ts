import { ColorThemeKind } from 'vscode';
import type { PaletteName } from '../../../language/src/editor/protocol.ts';

/** The inks that go with a theme of the editor's. */
export function paletteFor(kind: ColorThemeKind): PaletteName {
    switch (kind) {
        case ColorThemeKind.Dark:
            return 'dark';
        case ColorThemeKind.HighContrast:
            return 'high-contrast';
        case ColorThemeKind.HighContrastLight:
            return 'high-contrast-light';
        default:
            return 'light';
    }
}
