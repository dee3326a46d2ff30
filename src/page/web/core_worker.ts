// What the core's worker runs.
import { serve } from 'swathe-worker';

serve(self);
