# The installed command, with its man page and completions where those were built.
install(TARGETS swathe_app RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT command)
# The page, where it was built before (examples/page.sh).
install(FILES ${PROJECT_SOURCE_DIR}/build-page/swathe.html DESTINATION ${CMAKE_INSTALL_DATADIR}/swathe
        COMPONENT command OPTIONAL)
if(NOT SWATHE_MANUAL)
  return()
endif()
install(FILES ${SWATHE_PAGES}/swathe.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT command)
install(FILES ${SWATHE_PAGES}/job.schema.json DESTINATION ${CMAKE_INSTALL_DATADIR}/swathe
        COMPONENT command)
install(FILES ${SWATHE_PAGES}/bash/swathe DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions
        COMPONENT command)
# Debian's zsh looks into site-functions below /usr/local alone.
set(zsh_folder site-functions)
if(CMAKE_INSTALL_PREFIX STREQUAL "/usr" AND EXISTS /etc/debian_version)
  set(zsh_folder vendor-completions)
endif()
install(FILES ${SWATHE_PAGES}/zsh/_swathe DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/${zsh_folder}
        COMPONENT command)
install(FILES ${SWATHE_PAGES}/fish/swathe.fish
        DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT command)
