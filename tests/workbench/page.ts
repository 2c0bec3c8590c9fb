export const themes = {
    light: 'Default Light Modern',
    dark: 'Default Dark Modern',
    hc: 'Default High Contrast',
    'hc-light': 'Default High Contrast Light',
} as const;

export type Theme = keyof typeof themes;

export interface PageOptions {
    /** Name of the workspace folder, as it stands on disk. */
    folder: string;
    theme: Theme;
    /** Whether the workspace is trusted; if not, the editor runs restricted, without asking. */
    trusted: boolean;
    /**
     * As a user has it, rather than as under development: the editor then holds the extension to its `engines.vscode`,
     * and to what it declares about folders that are not trusted. A development extension it holds to neither.
     */
    installed: boolean;
    /** Whether another extension is served beside it. */
    beside: boolean;
    /** Defaults of settings, as `configurationDefaults`. */
    settings: Readonly<Record<string, unknown>>;
}

/**
 * The page that starts VS Code for the Web with a folder and an extension.
 *
 * @param host  name and port under which the browser reaches the server. Web views run under a name below it, so that
 *              they are another origin, as they are in the product; on plain `localhost` their service worker would be
 *              a third party's and be denied its storage.
 */
export function workbenchPage(host: string, options: PageOptions): string {
    const at = (path: string) => ({ scheme: 'http', authority: host, path });
    const extension = at('/extension');
    const configuration = {
        additionalBuiltinExtensions: [
            at('/file-system'),
            ...(options.beside ? [at('/beside')] : []),
            ...(options.installed ? [extension] : []),
        ],
        developmentOptions: { extensions: options.installed ? [] : [extension] },
        configurationDefaults: {
            'extensions.ignoreRecommendations': true,
            // The web build saves by itself; here a save is something that a person or a test does.
            'files.autoSave': 'off',
            'security.workspace.trust.enabled': !options.trusted,
            'security.workspace.trust.startupPrompt': 'never',
            'telemetry.telemetryLevel': 'off',
            'window.confirmBeforeClose': 'never',
            'workbench.colorTheme': themes[options.theme],
            'workbench.enableExperiments': false,
            'workbench.startupEditor': 'none',
            'workbench.tips.enabled': false,
            ...options.settings,
        },
        enableWorkspaceTrust: true,
        productConfiguration: {
            enableTelemetry: false,
            commit: 'local',
            quality: 'stable',
            webEndpointUrlTemplate: `http://{{uuid}}.${host}/build`,
            webviewContentExternalBaseUrlTemplate: `http://{{uuid}}.${host}/build/out/vs/workbench/contrib/webview/browser/pre/`,
        },
    };
    const workspace = {
        // The one scheme beside `file:` for which the editor asks whether the folder is trusted.
        folderUri: { scheme: 'vscode-vfs', authority: '', path: `/${options.folder}` },
        trusted: options.trusted,
    };
    // JSON stands in a script element, which only `<` can end.
    const inScript = (value: unknown) => JSON.stringify(value).replaceAll('<', '\\u003c');
    return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Workbench</title>
<link rel="icon" href="/build/favicon.ico">
<link rel="stylesheet" data-name="vs/workbench/workbench.web.main" href="/build/out/vs/workbench/workbench.web.main.css">
</head>
<body aria-label="">
<script src="/build/out/vs/loader.js"></script>
<script src="/build/out/vs/webPackagePaths.js"></script>
<script>
const build = location.origin + '/build';
const packages = Object.entries(self.webPackagePaths);
require.config({
    baseUrl: build + '/out',
    paths: Object.fromEntries(packages.map(([name, file]) => [name, build + '/node_modules/' + name + '/' + file])),
});
</script>
<script src="/build/out/vs/workbench/workbench.web.main.nls.js"></script>
<script src="/build/out/vs/workbench/workbench.web.main.js"></script>
<script>
const configuration = ${inScript(configuration)};
const workspace = ${inScript(workspace)};
require(['vs/workbench/workbench.web.main'], ({ create, URI }) => {
    const revive = (locations) => locations.map((location) => URI.revive(location));
    create(document.body, {
        ...configuration,
        additionalBuiltinExtensions: revive(configuration.additionalBuiltinExtensions),
        developmentOptions: { extensions: revive(configuration.developmentOptions.extensions) },
        workspaceProvider: {
            workspace: { folderUri: URI.revive(workspace.folderUri) },
            trusted: workspace.trusted,
            open: async () => false,
        },
    });
});
</script>
</body>
</html>
`;
}
