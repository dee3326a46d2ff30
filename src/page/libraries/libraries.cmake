# The libraries for WebAssembly under the names that the machine's own have elsewhere.
# SWATHE_PAGE_LIBRARIES is the folder that make.sh was given.
set(SWATHE_PAGE_LIBRARIES ${PROJECT_SOURCE_DIR}/build-page/libraries
    CACHE PATH "What src/page/libraries/make.sh has made")
set(made ${SWATHE_PAGE_LIBRARIES})
if(NOT EXISTS ${made}/stamp)
  message(FATAL_ERROR "No libraries in ${made}: sh src/page/libraries/make.sh ${made}")
endif()

# C++ 20 by libc++ 16 in place of emscripten's, and exceptions as the machine has them.
# Boost 1.74 asks for what C++17 took out of the library.
add_compile_options($<$<COMPILE_LANGUAGE:CXX>:-fwasm-exceptions>
                    $<$<COMPILE_LANGUAGE:CXX>:-nostdinc++>
                    "$<$<COMPILE_LANGUAGE:CXX>:SHELL:-isystem ${made}/include/c++>"
                    -D_LIBCPP_ENABLE_EXPERIMENTAL -D_LIBCPP_ENABLE_CXX17_REMOVED_UNARY_BINARY_FUNCTION)
add_link_options(-fwasm-exceptions -L${made}/lib -lc++16)

# page_library(TARGET INCLUDES LIBRARY...)
function(page_library target includes)
  add_library(${target} INTERFACE IMPORTED)
  target_include_directories(${target} INTERFACE ${includes})
  target_link_libraries(${target} INTERFACE ${ARGN})
endfunction()
page_library(PkgConfig::ZLIB ${made}/include -lz)
page_library(PkgConfig::CAIRO ${made}/include -lcairo -lpixman -lz)
page_library(PkgConfig::FREETYPE ${made}/include -lfreetype -lz)
page_library(PkgConfig::HARFBUZZ ${made}/include -lharfbuzz)
page_library(PkgConfig::CLIPPER ${made}/include/polyclipping -lpolyclipping)
foreach(target IN ITEMS fmt::fmt tl::expected tomlplusplus::tomlplusplus FastFloat::fast_float
                        nlohmann_json::nlohmann_json Boost::headers)
  page_library(${target} ${made}/include/header-only)
endforeach()
target_compile_definitions(fmt::fmt INTERFACE FMT_HEADER_ONLY)
