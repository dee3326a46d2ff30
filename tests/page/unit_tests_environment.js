// Programs of emscripten have an environment of their own; this one has the shell's, for SWATHE_SEED.
Module.preRun = () => Object.assign(ENV, process.env);
