// The server puts this line before the worker's text; see sw.js.
declare const BUILD: string
