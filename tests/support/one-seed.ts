import fc from 'fast-check';
import { runs } from './runs.ts';

// Every property begins at the same seed and is tried as often as the sweep says, those that name no number too.
fc.configureGlobal(runs(100));
