// The page's building blocks from the vendored library, by the names we use.
export { html, render, useState, useEffect, useLayoutEffect, useRef, useMemo, createContext, useContext, useErrorBoundary } from '../vendor/htm-preact.js'
