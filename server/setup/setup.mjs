// Runs before `npm start` and `npm test`: installs, builds, and with --browser makes sure of a Chromium. Node
// built-ins only, because node_modules may not exist yet. Work that is already done is skipped.
import { browser, build, install } from './steps.mjs';

install();
if (process.argv.includes('--browser')) browser();
build();
