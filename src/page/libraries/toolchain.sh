# Sourced: emscripten of Debian 12 with clang 16 in place of its clang 14, which lacks much of C++20.
LLVM=16
export EM_LLVM_ADD_VERSION=$LLVM EM_CLANG_ADD_VERSION=$LLVM
# Its scripts are for the Python of Debian, which may not be the first one there is.
export EMSDK_PYTHON=/usr/bin/python3
# They use packages of Debian's node, which another node looks for elsewhere.
export NODE_PATH=/usr/share/nodejs
