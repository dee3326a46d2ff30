# The man page and the shells' completions, made from the command line's own description, and the
# schema of a job, made from that of its keys.
file(GLOB SWATHE_MANUAL_SOURCES CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/app/manual/*.cpp)
add_executable(swathe_manual ${SWATHE_MANUAL_SOURCES})
target_compile_definitions(swathe_manual PRIVATE SWATHE_DESCRIPTION="${PROJECT_DESCRIPTION}")
target_link_libraries(swathe_manual PRIVATE swathe_app_parts swathe_flags fmt::fmt CLI11::CLI11)

find_program(GZIP_PROGRAM gzip REQUIRED)
set(SWATHE_PAGES ${PROJECT_BINARY_DIR}/manual)
add_custom_command(
  OUTPUT ${SWATHE_PAGES}/swathe.1.gz
  COMMAND swathe_manual ${SWATHE_PAGES}
  COMMAND ${GZIP_PROGRAM} -9nfk ${SWATHE_PAGES}/swathe.1
  DEPENDS swathe_manual
  COMMENT "Writing the man page, the completions and the schema of a job")
add_custom_target(swathe_pages ALL DEPENDS ${SWATHE_PAGES}/swathe.1.gz)
