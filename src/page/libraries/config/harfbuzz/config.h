// For harfbuzz 6.0.0+dfsg-3
//
// What HarfBuzz leaves out. Nothing that changes how a line of text is shaped: its own small builds
// (HB_TINY, HB_MINI) lose the kerning of older fonts.
#define HB_DISABLE_DEPRECATED
#define HB_NO_ATEXIT
#define HB_NO_BITMAP
#define HB_NO_BUFFER_MESSAGE
#define HB_NO_BUFFER_SERIALIZE
#define HB_NO_BUFFER_VERIFY
#define HB_NO_COLOR
#define HB_NO_DRAW
#define HB_NO_FACE_COLLECT_UNICODES
#define HB_NO_GETENV
#define HB_NO_LANGUAGE_LONG  // it is always "en"
#define HB_NO_LAYOUT_COLLECT_GLYPHS
#define HB_NO_LAYOUT_FEATURE_PARAMS
#define HB_NO_LAYOUT_UNUSED
#define HB_NO_MATH
#define HB_NO_META
#define HB_NO_MMAP
#define HB_NO_NAME
#define HB_NO_OPEN
#define HB_NO_SETLOCALE
#define HB_NO_STYLE
#define HB_NO_VERTICAL
