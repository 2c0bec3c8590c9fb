import { DidChangeConfigurationNotification, Emitter } from 'vscode-languageserver';
import type { EditorSharedServices } from './services.ts';

/** What a person may set, under `layback.` */
export interface Settings {
    /** Quantities in hovers and hints: as their author wrote them, or with the other system beside. */
    readonly units: 'author' | 'both';
    readonly inlayHints: {
        /** Metres behind a wave, the wave behind metres. */
        readonly waves: boolean;
        /** The share of the line class behind a drag, the force behind a share. */
        readonly shares: boolean;
        /** The towing pull behind a lure. */
        readonly pull: boolean;
        /** The other system's unit behind a quantity. */
        readonly units: boolean;
    };
    readonly codeLens: boolean;
    /** Applies the fixes that change no decision of the crew's when a file is saved. */
    readonly fixOnSave: boolean;
    /** Whether findings that take long are sought in open files alone, or in all. */
    readonly slowFindings: 'open' | 'all';
    /** Whether packages are read that are linked from outside the folder. */
    readonly linkedPackages: boolean;
}

export type DeepPartial<T> = { readonly [K in keyof T]?: T[K] extends object ? DeepPartial<T[K]> : T[K] };

export const usualSettings: Settings = {
    units: 'both',
    inlayHints: { waves: true, shares: true, pull: true, units: false },
    codeLens: true,
    fixOnSave: false,
    slowFindings: 'all',
    linkedPackages: false,
};

/** The person's settings as the client tells them; ours where it tells none. */
export class SettingsInForce {
    current: Settings = usualSettings;
    private readonly changed = new Emitter<Settings>();
    readonly onChange = this.changed.event;

    constructor(services: EditorSharedServices) {
        const { Client } = services.editor;
        const connection = services.lsp.Connection;
        const ask = async () => {
            const told = await connection?.workspace.getConfiguration('layback').catch(() => undefined);
            this.take(told);
        };
        Client.onInitialized(() => {
            this.take(Client.options.settings);
            const { configuration, didChangeConfiguration } = Client.capabilities.workspace ?? {};
            if (didChangeConfiguration?.dynamicRegistration)
                connection?.client
                    .register(DidChangeConfigurationNotification.type, { section: 'layback' })
                    .catch(() => undefined);
            if (configuration) void ask();
        });
        connection?.onDidChangeConfiguration(({ settings }) => {
            if (Client.capabilities.workspace?.configuration) void ask();
            else this.take(settings?.layback);
        });
    }

    private take(told: unknown): void {
        this.current = settingsFrom(told);
        this.changed.fire(this.current);
    }
}

/** Whatever a client sends: what is missing or of the wrong kind stays as usual. */
export function settingsFrom(told: unknown): Settings {
    return merged(usualSettings, told) as Settings;
}

function merged(usual: unknown, told: unknown): unknown {
    if (typeof usual !== 'object' || usual === null) return typeof told === typeof usual ? told : usual;
    const given = (typeof told === 'object' && told !== null ? told : {}) as DeepPartial<
        Record<string, unknown>
    >;
    return Object.fromEntries(Object.entries(usual).map(([key, value]) => [key, merged(value, given[key])]));
}
