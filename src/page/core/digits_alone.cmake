# digits_alone(FONT OUT): a font with its digits and nothing else, for numbers of a page that is sent
# whole. What is drawn of it has the same bytes: tests/page/bytes_test.mjs.
find_program(HB_SUBSET hb-subset REQUIRED)
function(digits_alone font out)
  get_filename_component(name ${font} NAME)
  set(made ${CMAKE_CURRENT_BINARY_DIR}/digits/${name})
  file(MAKE_DIRECTORY ${CMAKE_CURRENT_BINARY_DIR}/digits)
  execute_process(COMMAND ${HB_SUBSET} --unicodes=30-39 --layout-features=* --output-file=${made} ${font}
                  COMMAND_ERROR_IS_FATAL ANY)
  set(${out} ${made} PARENT_SCOPE)
endfunction()
