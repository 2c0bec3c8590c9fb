import { analyse } from '../plan/analyse.ts';
import type { Season } from '../plan/season/bites.ts';
import { groupings } from '../plan/season/groupings.ts';
import type { CheckedSheet } from '../rules/check.ts';
import type { SeasonText } from './protocol.ts';
import type { EditorSharedServices } from './services.ts';

/** What the logs of the workspace tell, counted when somebody asks and kept while they are the same. */
export class Seasons {
    private readonly services: EditorSharedServices;
    private sheets: readonly CheckedSheet[] = [];
    private season: Season | undefined;

    constructor(services: EditorSharedServices) {
        this.services = services;
    }

    /** What was seen at a position, as rows; undefined where no log tells of it. */
    async record(position: string): Promise<[string, string, string?][] | undefined> {
        const season = await this.current();
        return season && (await this.services.editor.Press.views()).positionRecord(season, position);
    }

    /** The whole season as a text. */
    async text(): Promise<SeasonText> {
        const season = await this.current();
        if (!season) return { days: 0, text: `${none}\n` };
        const { seasonTable } = await this.services.editor.Press.views();
        const isTorn = this.sheets.some(
            ({ document: { parseResult } }) => parseResult.parserErrors.length > 0,
        );
        const text = await seasonTable(season, groupings);
        return { days: season.logs.length, text: isTorn ? `${torn}\n\n${text}` : text };
    }

    private async current(): Promise<Season | undefined> {
        const sheets = [...this.services.editor.Checks.all()].filter(
            ({ resolved }) => resolved.logs.length > 0,
        );
        if (sheets.length === 0) return undefined;
        const isSame =
            sheets.length === this.sheets.length && sheets.every((each, at) => each === this.sheets[at]);
        if (!this.season || !isSame) {
            const { seasonOf } = await this.services.editor.Press.views();
            this.season = seasonOf(
                sheets.flatMap(({ resolved }) => resolved.logs),
                analyse,
            );
            this.sheets = sheets;
        }
        return this.season;
    }
}

const none =
    'There is no log in this workspace: log 2026-03-07 { using a-plan from 07:30 } in a .spread file is one.';
const torn = 'A log could not be read to its end, so events may be missing: its findings say where.';
