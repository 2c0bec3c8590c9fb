import { spawnSync } from 'node:child_process';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { expect, test } from 'vitest';
import { command, folderOf } from './layback.ts';

const page = readFileSync(join(import.meta.dirname, '../../language/docs/editors.md'), 'utf8');
const [recent, older] = [...page.matchAll(/```lua\n([\s\S]*?)```/g)].map(([, text]) => text!) as [
    string,
    string,
];

/** Major and minor of the Neovim that is installed; a real one takes half a second to say so. */
const version = /^NVIM v(\d+)\.(\d+)/.exec(
    spawnSync('nvim', ['--version'], { encoding: 'utf8' }).stdout ?? '',
);
const minor = version ? Number(version[1]) * 100 + Number(version[2]) : undefined;
const can = minor !== undefined && minor >= 7 && process.platform !== 'win32';
const told = can ? '' : ' (skipped: no Neovim from 0.7 on is installed here)';

/** What a crew would do with a plan, asked of the editor's own client: waits for what it needs, and says what it got. */
const probe = `
local function said(method, params)
    local all = vim.lsp.buf_request_sync(0, method, params, 20000) or {}
    for _, one in pairs(all) do return one.result end
end
local here = { uri = vim.uri_from_bufnr(0) }
local found = {}
vim.wait(20000, function() return #vim.diagnostic.get(0) > 0 end, 50)
found.findings = vim.tbl_map(function(one) return one.code or one.user_data.lsp.code end, vim.diagnostic.get(0))
found.filetype = vim.bo.filetype
local at = { textDocument = here, position = { line = 1, character = 6 } }
found.hover = said('textDocument/hover', { textDocument = here, position = { line = 2, character = 6 } })
found.completion = said('textDocument/completion', at)
vim.api.nvim_buf_set_lines(0, 1, 2, false, { '  length    9.8 m' })
if vim.lsp.buf.format then vim.lsp.buf.format({ timeout_ms = 20000 })
else vim.lsp.buf.formatting_sync(nil, 20000) end
found.text = vim.api.nvim_buf_get_lines(0, 0, -1, false)
vim.wait(20000, function() return #vim.diagnostic.get(0) == 0 end, 50)
found.left = #vim.diagnostic.get(0)
local file = io.open(vim.env.LAYBACK_FOUND, 'w')
file:write(vim.fn.json_encode(found))
file:close()
vim.cmd('qa!')
`;

test.skipIf(!can)(
    `Neovim, set up as the page says, checks, tells, completes and lays out a plan${told}`,
    {
        timeout: 120_000,
    },
    () => {
        const folder = folderOf({
            'init.lua': minor! >= 11 ? recent : older,
            'probe.lua': probe,
            'plans/.git/keep': '',
            'plans/boat.spread': 'boat heron "Heron" {\n    lenght 9.8 m\n    beam 3.4 m\n}\n',
            'bin/layback': `#!/bin/sh\nexec '${process.execPath}' '${command}' "$@"\n`,
        });
        chmodSync(join(folder, 'bin/layback'), 0o755);
        const answer = join(folder, 'found.json');
        writeFileSync(answer, 'null');
        const { stderr } = spawnSync(
            'nvim',
            [
                '--headless',
                '-u',
                join(folder, 'init.lua'),
                'boat.spread',
                '-c',
                `luafile ${join(folder, 'probe.lua')}`,
            ],
            {
                cwd: join(folder, 'plans'),
                encoding: 'utf8',
                timeout: 100_000,
                env: {
                    ...process.env,
                    PATH: [join(folder, 'bin'), process.env.PATH].join(delimiter),
                    LAYBACK_FOUND: answer,
                    XDG_STATE_HOME: folder,
                    XDG_DATA_HOME: folder,
                    XDG_CACHE_HOME: folder,
                },
            },
        );
        const found = JSON.parse(readFileSync(answer, 'utf8'));
        expect(found, stderr).not.toBeNull();
        expect(found.filetype).toBe('layback');
        expect(found.findings).toEqual(['unknown-word']);
        expect(JSON.stringify(found.hover)).toContain('beam');
        const items = found.completion.items ?? found.completion;
        expect(items.map(({ label }: { label: string }) => label)).toContain('waterline');
        expect(found.text).toEqual(['boat heron "Heron" { length 9.8 m  beam 3.4 m }']);
        expect(found.left).toBe(0);
    },
);

test('what is set up for Neovim is one server, by the command that there is', () => {
    for (const text of [recent, older]) {
        expect(text).toContain("cmd = { 'layback', 'language-server', '--stdio' }");
        expect(text).toContain("extension = { spread = 'layback' }");
    }
});
