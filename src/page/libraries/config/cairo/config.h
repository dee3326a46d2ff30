// For cairo 1.16.0-7
//
// What Cairo's sources ask about the machine, answered for WebAssembly with musl's C library.
#define HAVE_STDINT_H 1
#define HAVE_INTTYPES_H 1
#define HAVE_UINT64_T 1
#define HAVE___UINT128_T 1
#define HAVE_GMTIME_R 1
#define HAVE_LOCALTIME_R 1
#define HAVE_ZLIB 1

#define SIZEOF_INT 4
#define SIZEOF_LONG 4
#define SIZEOF_LONG_LONG 8
#define SIZEOF_SIZE_T 4
#define SIZEOF_VOID_P 4

#define CAIRO_NO_MUTEX 1  // no threads
