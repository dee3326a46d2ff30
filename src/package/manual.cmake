# The man page and the shells' completions, made from the command line's own description.
file(GLOB SWATHE_MANUAL_SOURCES CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/app/manual/*.cpp)
list(FILTER SWATHE_MANUAL_SOURCES EXCLUDE REGEX "/main.cpp$")
add_library(swathe_manual_parts STATIC ${SWATHE_MANUAL_SOURCES})  # apart from main(), for the tests
target_link_libraries(swathe_manual_parts PUBLIC swathe_app_parts PRIVATE swathe_flags fmt::fmt)
add_executable(swathe_manual ${PROJECT_SOURCE_DIR}/src/app/manual/main.cpp)
target_compile_definitions(swathe_manual PRIVATE SWATHE_VERSION="${PROJECT_VERSION}"
                                                 SWATHE_DESCRIPTION="${PROJECT_DESCRIPTION}")
target_link_libraries(swathe_manual PRIVATE swathe_manual_parts swathe_flags)

find_program(GZIP_PROGRAM gzip REQUIRED)
set(manual ${PROJECT_BINARY_DIR}/manual)
add_custom_command(
  OUTPUT ${manual}/swathe.1.gz
  COMMAND swathe_manual ${manual}
  COMMAND ${GZIP_PROGRAM} -9nfk ${manual}/swathe.1
  DEPENDS swathe_manual
  COMMENT "Writing the man page and the completions")
add_custom_target(swathe_pages ALL DEPENDS ${manual}/swathe.1.gz)

install(FILES ${manual}/swathe.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT command)
install(FILES ${manual}/bash/swathe DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions
        COMPONENT command)
# Debian's zsh looks into site-functions below /usr/local alone.
set(zsh_folder site-functions)
if(CMAKE_INSTALL_PREFIX STREQUAL "/usr" AND EXISTS /etc/debian_version)
  set(zsh_folder vendor-completions)
endif()
install(FILES ${manual}/zsh/_swathe DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/${zsh_folder}
        COMPONENT command)
install(FILES ${manual}/fish/swathe.fish
        DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT command)
