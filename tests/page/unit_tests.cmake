# The library's unit tests for node, built on request (unit_tests.sh). Left out are those of the
# command, and those that ask other programs or libraries of the machine.
file(GLOB_RECURSE SWATHE_UNIT_SOURCES CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/tests/*_test.cpp)
list(FILTER SWATHE_UNIT_SOURCES EXCLUDE REGEX "/tests/(app|cgal)/")
foreach(source IN LISTS SWATHE_UNIT_SOURCES)
  file(STRINGS ${source} asks REGEX "support/commands.hpp|maths/correct.hpp|<mpfr|to_png")
  if(asks)
    list(REMOVE_ITEM SWATHE_UNIT_SOURCES ${source})
  endif()
endforeach()
file(GLOB SWATHE_UNIT_SUPPORT CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/tests/support/*.cpp)
add_executable(swathe_unit_tests EXCLUDE_FROM_ALL ${PROJECT_SOURCE_DIR}/tests/page/unit_tests_main.cpp ${SWATHE_UNIT_SUPPORT}
               ${PROJECT_SOURCE_DIR}/src/page/core/no_png.cpp ${SWATHE_UNIT_SOURCES})
target_include_directories(swathe_unit_tests PRIVATE ${PROJECT_SOURCE_DIR}/tests ${PROJECT_SOURCE_DIR}/src)
target_compile_definitions(swathe_unit_tests PRIVATE DOCTEST_CONFIG_NO_MULTITHREADING SWATHE_TEST_DATA="${PROJECT_SOURCE_DIR}/tests"
                                                     SWATHE_SOURCE="${PROJECT_SOURCE_DIR}")
# doctest's header without the machine's others.
find_path(DOCTEST_FOLDER doctest.h PATH_SUFFIXES doctest PATHS /usr/include REQUIRED NO_CMAKE_FIND_ROOT_PATH)
file(MAKE_DIRECTORY ${CMAKE_CURRENT_BINARY_DIR}/doctest-alone)
file(CREATE_LINK ${DOCTEST_FOLDER} ${CMAKE_CURRENT_BINARY_DIR}/doctest-alone/doctest SYMBOLIC)
target_include_directories(swathe_unit_tests SYSTEM PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/doctest-alone)
target_link_libraries(swathe_unit_tests PRIVATE swathe::swathe swathe_flags swathe_header_only fmt::fmt
                      PkgConfig::HARFBUZZ PkgConfig::FREETYPE)
# What is tested is built as it is sent; the tests only have to be built soon.
target_compile_options(swathe_unit_tests PRIVATE -O1)
target_precompile_headers(swathe_unit_tests PRIVATE <algorithm> <functional> <map> <ranges> <unordered_map>
                          <fmt/format.h> <swathe/swathe.hpp> <doctest/doctest.h>)
set_source_files_properties(${PROJECT_SOURCE_DIR}/tests/page/unit_tests_main.cpp PROPERTIES SKIP_PRECOMPILE_HEADERS ON)
set(environment ${CMAKE_CURRENT_LIST_DIR}/unit_tests_environment.js)
set_target_properties(swathe_unit_tests PROPERTIES LINK_DEPENDS ${environment})
target_link_options(swathe_unit_tests PRIVATE -O1 "SHELL:--pre-js ${environment}" "SHELL:-s NODERAWFS=1" "SHELL:-s WASM_ASYNC_COMPILATION=0"
  "SHELL:-s EXIT_RUNTIME=1" "SHELL:-s ALLOW_MEMORY_GROWTH=1" "SHELL:-s MAXIMUM_MEMORY=2GB" "SHELL:-s TOTAL_STACK=5MB")
